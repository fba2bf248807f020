#include "core/message/texts/sections.h"

namespace stayalight::texts_of {
namespace {

const TextRow kRows[] = {
    {"file.too_big", TEXT("Stayalight", "%1 is %2 bytes long; a plan file has at most %3")},
    {"file.empty", TEXT("Stayalight", "%1 is empty")},
    {"file.not_text", TEXT("Stayalight", "%1 is no plan: it is not UTF-8 text (line %2, byte %3)")},
    {"file.not_json", TEXT("Stayalight", "%1 is not a plan: line %2, column %3: %4")},
    {"file.ends_early", TEXT("Stayalight", "the text ends too early, as if the file were cut off")},
    {"file.unexpected", TEXT("Stayalight", "no JSON is written so: %1")},
    {"file.number_too_large", TEXT("Stayalight", "the number %1 is too large")},
    {"file.whole_too_large", TEXT("Stayalight", "%1: line %2: the whole number %3 does not fit in 64 bits")},
    {"file.too_deep", TEXT("Stayalight", "%1: line %2: nested more than %3 deep, which no plan is")},
    {"file.too_many_values", TEXT("Stayalight", "%1: line %2: more than %3 values, which no plan holds")},
    {"file.too_many_circuits", TEXT("Stayalight", "%1: line %2: more than %3 circuits, which no plan holds")},
    {"file.duplicate_key", TEXT("Stayalight", "%1: line %2: the key \"%3\" stands twice, first in line %4")},
    {"file.not_a_plan",
     TEXT("Stayalight", "%1 is JSON, but no Stayalight plan: it does not begin with \"stayalight\" and a format")},
    {"file.other_format",
     TEXT("Stayalight", "%1 is written in format %2 of plans; this program reads format %3")},
    {"file.wrong_type", TEXT("Stayalight", "%1: line %2, %3: wants %4, but has %5")},
    {"file.type_null", TEXT("Stayalight", "nothing (null)")},
    {"file.type_flag", TEXT("Stayalight", "true or false")},
    {"file.type_whole", TEXT("Stayalight", "a whole number")},
    {"file.type_number", TEXT("Stayalight", "a number")},
    {"file.type_text", TEXT("Stayalight", "a text")},
    {"file.type_list", TEXT("Stayalight", "a list")},
    {"file.type_object", TEXT("Stayalight", "an object")},
    {"file.at", TEXT("Stayalight", "%1: line %2, %3: %4")},
    {"file.in", TEXT("Stayalight", "%1: %2")},
    {"file.id_missing", TEXT("Stayalight", "the id is missing")},
    {"file.duplicate_id", TEXT("Stayalight", "%1: line %2, %3: %4 %5 stands twice, first in line %6")},
    {"file.dangling", TEXT("Stayalight", "%1: line %2, %3: there is no %4 %5")},
    {"file.no_memory", TEXT("Stayalight", "%1: there is not enough memory to read it")},
    {"file.higher_level",
     TEXT("Stayalight",
          "%1 is of level %2, and this program knows level %3: what it does not know is kept as it is")},
    {"file.kept_keys",
     TEXT("Stayalight", "%1: %2 entries are not known to this program and are kept as they are, first %3")},
    {"file.kept_words",
     TEXT("Stayalight", "%1: %2 choices are not known to this program and are kept as they are, first %3")},
    {"document.missing", TEXT("Stayalight", "%1: there is no such file")},
    {"document.folder", TEXT("Stayalight", "%1 is a folder, not a plan file")},
    {"document.no_file", TEXT("Stayalight", "%1 is no ordinary file")},
    {"document.unreadable", TEXT("Stayalight", "%1 cannot be read: %2")},
    {"document.no_folder", TEXT("Stayalight", "%1 cannot be written: the folder %2 is not there")},
    {"document.unwritable", TEXT("Stayalight", "%1 cannot be written: %2. The file is as it was before")},
    {"document.read_back", TEXT("Stayalight", "%1 was written, but reads back otherwise. Save it in another place")},
    {"document.not_kept", TEXT("Stayalight", "%1: no plan file can hold this: %2")},
    {"document.held",
     TEXT("Stayalight", "%1 is open elsewhere: by %2 on %3 (process %4) since %5. It is not written from here meanwhile")},
    {"document.changed_on_disk", TEXT("Stayalight", "%1 was changed on the disk by something else since it was opened here")},
    {"consistency.no_panel", TEXT("Stayalight", "breaker %1 stands in no panel")},
    {"consistency.no_space",
     TEXT("Stayalight", "breaker %1 takes the %2 column's row %3, and %4 with its %5 spaces has no such space")},
    {"consistency.overlap_before",
     TEXT("Stayalight", "before the work breaker %1 (space %2) and breaker %3 (space %4) of %5 take the same room")},
    {"consistency.overlap_planned",
     TEXT("Stayalight", "as planned breaker %1 (space %2) and breaker %3 (space %4) of %5 take the same room")},
    {"consistency.fed_in_ring", TEXT("Stayalight", "%1 is fed from itself, round other panels or straight")},
};

}  // namespace

const std::span<const TextRow> file(kRows);

}  // namespace stayalight::texts_of
