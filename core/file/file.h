#pragma once

// A plan as text and back; no file system. The text is JSON, one thing a line, in the order of the field
// table.

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/message/result.h"
#include "core/message/watch.h"
#include "core/plan/field.h"

namespace stayalight {

inline constexpr int kFormat = 1;  ///< another number is refused by name
inline constexpr int kLevel = 1;   ///< of fields; a higher level opens, its keys are kept

struct ReadLimits {
  std::size_t bytes = 32u << 20;
  int depth = 64;
  std::size_t circuits = 2000;
  std::size_t values = 1000000;
};
struct ReadPlan {
  Plan plan;
  std::vector<Message> notes;  ///< what was changed or kept unread: a higher level, unknown words, migrations
};
/// `name` is what messages call the source, e.g. the file's name. Messages give the place (line, or path to
/// the key), the value found and what was expected. Never throws, never crashes, whatever the text.
/// Refused too where the one who watches stops it.
[[nodiscard]] Result<ReadPlan> readPlan(std::string_view text, const std::string& name,
                                        const ReadLimits& limits = {}, const Watch& watch = {});
/// The text ends with a newline. Reading it gives an equal plan, unknown keys too.
[[nodiscard]] std::string writePlan(const Plan& plan);
/// Only some of its parts, by their keys in the file ("inverter", "circuits"): a plan file too, which holds
/// nothing else of the house.
[[nodiscard]] std::string writePart(const Plan& plan, std::span<const std::string_view> parts);
/// The JSON Schema of the format, made from the field table; resources/ holds a copy that a test compares.
[[nodiscard]] std::string planSchema();

}  // namespace stayalight
