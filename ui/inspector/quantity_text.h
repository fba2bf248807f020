#pragma once

// What people type into a quantity field, and how the field shows it. Free of Qt.
//
// A typed text is an expression of numbers, units, + - * / and parentheses: "1.5 kW", "3*120+40", "12 ft 6
// in", "68 F", "2/h", "100 Ah * 51.2 V". A number without any unit counts in the unit the field shows. Either
// decimal mark is read; a comma or point before groups of three digits is a thousands mark where the language
// writes it so.

#include <string>
#include <string_view>

#include "core/message/result.h"
#include "core/plan/field.h"

namespace stayalight {

/// Which units a field shows where the trade has two.
struct ShownUnits {
  bool metric = false;  ///< metres and degrees Celsius; else feet and degrees Fahrenheit
};

/// The number in the unit the plan keeps (micrometres, thousandths of a degree, minutes after midnight,
/// fraction of 1), or a sentence that says what is wrong with the text. Does not look at the field's range.
/// `decimalMark` is the language's own, '.' or ','.
[[nodiscard]] Result<double> readQuantity(std::string_view text, Unit unit, char decimalMark = '.',
                                          const ShownUnits& shown = {});

/// The number as the field shows it, with as many digits as bring back the same number; without the unit.
[[nodiscard]] std::string writeQuantity(double value, Unit unit, const Language& language,
                                        const ShownUnits& shown = {});

/// What stands after the number: "W", "ft", "% ", empty for a plain number and for clock times.
[[nodiscard]] std::string_view shownUnit(Unit unit, const ShownUnits& shown = {});

/// The mark a language writes between whole and decimals.
[[nodiscard]] char decimalMarkOf(const Language& language);

}  // namespace stayalight
