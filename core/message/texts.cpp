#include <algorithm>

#include "core/message/texts/sections.h"

namespace stayalight {

const std::vector<TextRow>& texts() {
  static const std::vector<TextRow> sorted = [] {
    std::vector<TextRow> rows;
    for (const auto& section :
         {texts_of::field,     texts_of::fieldSupply, texts_of::panel,     texts_of::edit,
          texts_of::directory, texts_of::survey,      texts_of::transfer,  texts_of::use,
          texts_of::demand,    texts_of::start,       texts_of::wiring,    texts_of::outage,
          texts_of::review,    texts_of::file,        texts_of::wording,   texts_of::board,
          texts_of::answers,   texts_of::shell,       texts_of::inspector, texts_of::paper,
          texts_of::catalogue, texts_of::search,      texts_of::settings,  texts_of::onsite}) {
      rows.insert(rows.end(), section.begin(), section.end());
    }
    std::sort(rows.begin(), rows.end(), [](const TextRow& a, const TextRow& b) { return a.key < b.key; });
    return rows;
  }();
  return sorted;
}

}  // namespace stayalight
