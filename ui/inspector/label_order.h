#pragma once

// In which order a form asks for what a label or a data sheet states, under which plain headings. Common
// practice of data sheets, no source.

#include <span>
#include <string_view>

#include "core/message/message.h"
#include "core/plan/identity.h"

namespace stayalight {

struct LabelGroup {
  MessageId heading;
  std::span<const std::string_view> fields;
  std::string_view
      list;  ///< of the record's lists, the one that stands at the end of the group; may be empty
};

/// The groups of a record; none where its fields stand in the order of the field table. Fields that no group
/// names follow the last one.
[[nodiscard]] std::span<const LabelGroup> labelGroups(RecordKind kind);

}  // namespace stayalight
