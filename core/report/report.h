#pragma once

// An assessment as JSON: schema and version inside, units in the keys, figures rounded once, here.

#include <string>

#include "core/assess/assess.h"

namespace stayalight {

/// One JSON object for a plan; `name` is the plan's file name.
[[nodiscard]] std::string reportJson(const Plan& plan, const Assessment& assessment, const std::string& name,
                                     const Language& language);
/// JSON Schema of that object; resources/ holds a copy that a test compares.
[[nodiscard]] std::string reportSchema();

}  // namespace stayalight
