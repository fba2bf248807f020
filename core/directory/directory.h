#pragma once

// A panel's directory as somebody typed it, line by line: "1 Kitchen", "3/5 Range 50A 2P", "2) Lights",
// "7,9 dryer 30", one a line or in tab-separated fields. No line is lost: each one is read or named with the
// reason why not.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/edit/edit.h"

namespace stayalight {

/// What a line says of its spaces.
enum class DirectoryUse : std::uint8_t {
  circuit,  ///< a breaker with a circuit
  spare,    ///< a breaker that feeds nothing
  empty     ///< no breaker ("open", "blank", or a number with nothing behind it)
};

struct DirectoryEntry {
  std::vector<std::string> spaces;  ///< printed numbers, at least one, without the letter of a half
  Half half = Half::whole;          ///< whole, a or b
  std::string name;                 ///< the words, without rating and poles
  std::string serves;               ///< a second field of a tab-separated line
  std::optional<RatingAmperes> rating;
  std::optional<std::int32_t> poles;  ///< where the line says so; two spaces are two poles
  DirectoryUse use = DirectoryUse::circuit;
  std::optional<Message> note;  ///< how an ambiguous word was taken
};

struct DirectoryLine {
  std::int32_t number = 1;              ///< of the line, from 1
  std::string text;                     ///< as typed, without its line end
  std::vector<DirectoryEntry> entries;  ///< one, or two where two columns stand beside each other
  std::optional<Message> notRead;       ///< why there is no entry; empty lines have neither
};

/// One line for each line of the text, in its order.
[[nodiscard]] std::vector<DirectoryLine> readDirectory(std::string_view text);

/// "50A", "2P", "2P50", "50A 2P", "50/2", "50": rating and poles as the trade writes them; nothing where the
/// text is another. A bare number is a rating where it is a standard one.
struct RatingWords {
  std::optional<std::int32_t> rating;
  std::optional<std::int32_t> poles;
};
[[nodiscard]] std::optional<RatingWords> readRating(std::string_view text);

enum class DirectoryDone : std::uint8_t { added, nothingToAdd, alreadyThere, refused };
struct DirectoryOutcome {
  std::size_t line = 0;   ///< index among the lines
  std::size_t entry = 0;  ///< index in the line; 0 also for a line that was not read
  DirectoryDone done = DirectoryDone::refused;
  Message said;  ///< in a few words
};
struct EnteredDirectory {
  Plan plan;
  std::vector<DirectoryOutcome> outcomes;  ///< one for each entry, and for each line that was not read
  std::int32_t added = 0;                  ///< breakers and circuits that are new
};
/// The plan with all entries that fit in the panel. What stands there already stays; an entry that says
/// something else is refused with what stands there.
[[nodiscard]] EnteredDirectory enterDirectory(const Plan& plan, PanelId panel,
                                              const std::vector<DirectoryLine>& lines);

/// A panel has at most 84 spaces, and a directory some lines more; a longer text is none.
inline constexpr std::size_t kMostDirectoryLines = 1000;

/// Rating of a breaker whose line gives none. Common practice, no source.
inline constexpr RatingAmperes kRatingNotRead{20};

}  // namespace stayalight
