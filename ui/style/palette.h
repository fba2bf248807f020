#pragma once

// Colours are roles with a value in each of three palettes; nothing that is drawn names a colour itself.

#include <QtGui/QColor>
#include <QtGui/QPalette>
#include <array>
#include <cstdint>
#include <span>

namespace stayalight {

enum class Theme : std::uint8_t { light, dark, contrast };

enum class ColorRole : std::uint8_t {
  window,
  sheet,
  box,   ///< enamel of a panel's enclosure
  cell,  ///< breaker that stays in the main panel
  freeSpace,
  movedAway,
  spine,  ///< bus between the columns
  gap,    ///< between the rows of a board
  lit,    ///< lamplight: backed up
  litEdge,
  lamp,     ///< ring, underline, can land
  lampInk,  ///< text on lamplight
  ink,      ///< text, first
  ink2,
  ink3,
  hairline,
  edge,  ///< of fields, buttons, free spaces
  boxEdge,
  track,  ///< of bars
  body,   ///< of a breaker
  bodyEdge,
  bodyInk,  ///< rating on the body
  knob,
  plate,  ///< engraved nameplate
  plateInk,
  plateFact,
  hatch,  ///< of a space whose circuit moved away
  leg1,
  leg2,
  ground,  ///< equipment grounding conductor
  danger,
  mustFix,
  check,
  advice,
  night,     ///< hours of the night in the strip
  cellRule,  ///< hairline under a row, seen in high contrast only
  paper,
};
inline constexpr std::size_t kColorRoleCount = static_cast<std::size_t>(ColorRole::paper) + 1;

/// The colours of one theme.
class Palette {
 public:
  explicit Palette(Theme theme) : theme_(theme) {}
  [[nodiscard]] Theme theme() const { return theme_; }
  [[nodiscard]] QColor color(ColorRole role) const;
  friend bool operator==(const Palette&, const Palette&) = default;

 private:
  Theme theme_;
};

/// For the widgets of the Fusion style, disabled group, placeholder and tooltip included.
[[nodiscard]] QPalette widgetPalette(const Palette& palette);

/// Contrast of two opaque colours by the formula of WCAG 2 (relative luminance), 1 to 21.
[[nodiscard]] double contrast(const QColor& a, const QColor& b);

/// A colour and a ground it stands on somewhere in the program; text wants 4.5, marks and edges want 3.
struct ColorPair {
  ColorRole color;
  ColorRole ground;
  bool text = true;
};
[[nodiscard]] std::span<const ColorPair> colorPairs();

}  // namespace stayalight
