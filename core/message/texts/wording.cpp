#include "core/message/texts/sections.h"

namespace stayalight::texts_of {
namespace {

const TextRow kRows[] = {
    // -- clock times, in the words people use
    {"wording.am", TEXT("Stayalight", "%1 a.m.")},
    {"wording.pm", TEXT("Stayalight", "%1 p.m.")},
    {"wording.noon", TEXT("Stayalight", "noon")},
    {"wording.midnight", TEXT("Stayalight", "midnight")},
    {"wording.duration", TEXT("Stayalight", "%1 h %2")},
    // -- what a citation says where no section of the code stands
    {"wording.practice", TEXT("Stayalight", "practice")},
    {"wording.listed_instructions", TEXT("Stayalight", "listed instructions")},
    {"wording.not_in_edition", TEXT("Stayalight", "no such rule in %1")},
    {"wording.section_not_confirmed", TEXT("Stayalight", "section not confirmed in %1")},
    {"wording.code_not_covered", TEXT("Stayalight", "code not covered")},
    {"wording.step", TEXT("Stayalight", "step %1")},
    // -- grades of a fact
    {"wording.grade_unknown", TEXT("Stayalight", "unknown")},
    {"wording.grade_typical", TEXT("Stayalight", "typical")},
    {"wording.grade_nameplate", TEXT("Stayalight", "nameplate")},
    {"wording.grade_traced", TEXT("Stayalight", "traced")},
    {"wording.grade_measured", TEXT("Stayalight", "measured")},
    // -- a figure against its limit
    {"wording.within", TEXT("Stayalight", "within")},
    {"wording.over", TEXT("Stayalight", "over")},
    {"wording.not_known", TEXT("Stayalight", "not known")},
};

}  // namespace

const std::span<const TextRow> wording(kRows);

}  // namespace stayalight::texts_of
