#pragma once

// The faces built into the program. They are loaded from the binary, never looked up on the machine: equal
// digits, and no ligature characters in the text of a PDF.

#include <QtGui/QFont>
#include <cstdint>

namespace stayalight {

enum class Face : std::uint8_t {
  text,       ///< Roboto
  condensed,  ///< Roboto Condensed: boards, tables, paper
  engraved    ///< Routed Gothic Wide: nameplates and sheet titles, never numbers
};

enum class Weight : std::uint8_t { regular, medium, bold };

/// Loads the faces; once a process, after the application object stands. False where the font database took
/// one of them not: then no text would be drawn in it.
[[nodiscard]] bool loadFaces();

/// A font of that face; `pixels` may be fractional in a scaled painter and is kept to a tenth.
[[nodiscard]] QFont font(Face face, double pixels, Weight weight = Weight::regular, bool italic = false);

/// Widths of a text in layout units, the same on screen and paper: measured once at a large size and scaled,
/// so that a text that fits at one scale fits at every other.
[[nodiscard]] double textWidth(const QString& text, Face face, double pixels, Weight weight = Weight::regular,
                               bool italic = false);
/// Above and below the baseline, at that size.
[[nodiscard]] double ascent(Face face, double pixels);
[[nodiscard]] double descent(Face face, double pixels);
/// The text, or as much of it as fits with an ellipsis.
[[nodiscard]] QString elided(const QString& text, double width, Face face, double pixels,
                             Weight weight = Weight::regular, bool italic = false);

}  // namespace stayalight
