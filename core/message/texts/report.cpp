#include "core/message/texts/sections.h"

namespace stayalight::texts_of {
namespace {

const TextRow kRows[] = {
    {"report.name", TEXT("Stayalight", "report")},
};

}  // namespace

const std::span<const TextRow> report(kRows);

}  // namespace stayalight::texts_of
