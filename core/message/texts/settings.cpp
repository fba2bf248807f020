#include "core/message/texts/sections.h"

namespace stayalight::texts_of {
namespace {

const TextRow kRows[] = {
    {"settings.title", TEXT("Stayalight", "Settings")},
    {"settings.program", TEXT("Stayalight", "The program")},
    {"settings.new_plans", TEXT("Stayalight", "Each new plan starts with")},
    {"settings.units", TEXT("Stayalight", "Lengths and temperatures")},
    {"settings.units.us", TEXT("Stayalight", "feet and degrees Fahrenheit")},
    {"settings.units.metric", TEXT("Stayalight", "metres and degrees Celsius")},
    {"settings.mark", TEXT("Stayalight", "Decimal mark")},
    {"settings.mark.system", TEXT("Stayalight", "as the system has it")},
    {"settings.mark.point", TEXT("Stayalight", "point: 1,200.5")},
    {"settings.mark.comma", TEXT("Stayalight", "comma: 1.200,5")},
    {"settings.theme", TEXT("Stayalight", "Colours")},
    {"settings.theme.system", TEXT("Stayalight", "as the desktop has them")},
    {"settings.theme.light", TEXT("Stayalight", "light")},
    {"settings.theme.dark", TEXT("Stayalight", "dark")},
    {"settings.theme.contrast", TEXT("Stayalight", "high contrast")},
    {"settings.less_motion", TEXT("Stayalight", "Less motion")},
    {"settings.autosave", TEXT("Stayalight", "Kept aside after a change")},
    {"settings.autosave.suffix", TEXT("Stayalight", " s")},
    {"settings.paper", TEXT("Stayalight", "Paper")},
    {"settings.paper.letter", TEXT("Stayalight", "Letter")},
    {"settings.paper.a4", TEXT("Stayalight", "A4")},
    {"settings.firm", TEXT("Stayalight", "Firm")},
    {"settings.licence", TEXT("Stayalight", "Licence number")},
    {"settings.drawn_by", TEXT("Stayalight", "Drawn by")},
    {"settings.note",
     TEXT("Stayalight",
          "Each change holds at once, in all windows. Open plans keep their own paper and title block.")},
    // -- a settings file that says something else
    {"settings.damaged", TEXT("Stayalight",
                              "%1: parts of this settings file cannot be read. Defaults stand for them. The "
                              "file as it was is kept as %2.")},
    {"settings.unreadable", TEXT("Stayalight", "%1: this settings file cannot be read. The defaults hold.")},
    {"settings.no_value", TEXT("Stayalight", "%1: %2 is \"%3\", expected %4. Its default holds.")},
    {"settings.expected.yes_or_no", TEXT("Stayalight", "true or false")},
    {"settings.expected.word", TEXT("Stayalight", "one of %1")},
    {"settings.expected.seconds", TEXT("Stayalight", "a whole number from %1 to %2")},
    {"settings.expected.text", TEXT("Stayalight", "a line of text of at most %1 characters")},
};

}  // namespace

const std::span<const TextRow> settings(kRows);

}  // namespace stayalight::texts_of
