#pragma once

// A plain value of the field table as a cell of a table; how a graded fact is spread over cells each table
// says itself. Inside the tables of core only.

#include <string>

#include "core/directory/csv.h"
#include "core/plan/field.h"

namespace stayalight {

struct PlainCell {
  std::string operator()(NoValue) const { return {}; }
  std::string operator()(bool value) const { return value ? "yes" : "no"; }
  std::string operator()(std::int64_t value) const { return std::to_string(value); }
  std::string operator()(double value) const { return numberCell(value); }
  std::string operator()(const std::string& value) const { return value; }
};

}  // namespace stayalight
