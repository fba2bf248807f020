#include <algorithm>
#include <array>

#include "core/catalogue/columns.h"

namespace stayalight {
namespace table {

std::vector<std::string> wordsOf(std::string_view text) {
  std::vector<std::string> words;
  std::string word;
  const auto end = [&] {
    if (!word.empty()) words.push_back(word);
    word.clear();
  };
  for (const char c : text) {
    // A slash and a point belong to figures: 1/2 hp.
    if (c == ' ' || c == '\t' || c == ',' || c == ';' || c == '(' || c == ')' || c == '-' || c == '_')
      end();
    else
      word += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  }
  end();
  return words;
}

namespace {

bool anyBegins(const std::vector<std::string>& words, const std::string& typed) {
  return std::any_of(words.begin(), words.end(),
                     [&](const std::string& word) { return word.compare(0, typed.size(), typed) == 0; });
}

enum class Rank : std::uint8_t { nameBegins, inName, inWords, none };

Rank rank(const CatalogueEntry& entry, const std::vector<std::string>& typed) {
  const std::vector<std::string> name = wordsOf(entry.load.name);
  const bool inName =
      std::all_of(typed.begin(), typed.end(), [&](const std::string& word) { return anyBegins(name, word); });
  if (inName) {
    const bool begins =
        typed.empty() || (!name.empty() && name.front().compare(0, typed.front().size(), typed.front()) == 0);
    return begins ? Rank::nameBegins : Rank::inName;
  }
  const bool inWords = std::all_of(typed.begin(), typed.end(), [&](const std::string& word) {
    return anyBegins(name, word) || anyBegins(entry.words, word);
  });
  return inWords ? Rank::inWords : Rank::none;
}

}  // namespace
}  // namespace table

std::vector<const CatalogueEntry*> search(std::span<const CatalogueEntry> entries, std::string_view typed) {
  const std::vector<std::string> words = table::wordsOf(typed);
  std::array<std::vector<const CatalogueEntry*>, 3> found;
  for (const CatalogueEntry& entry : entries) {
    const table::Rank rank = table::rank(entry, words);
    if (rank != table::Rank::none) found[static_cast<std::size_t>(rank)].push_back(&entry);
  }
  std::vector<const CatalogueEntry*> all;
  for (const auto& group : found) all.insert(all.end(), group.begin(), group.end());
  return all;
}

Load loadFrom(const CatalogueEntry& entry) {
  Load load = entry.load;
  for (const Field& field : recordType(RecordKind::load).fields) {
    if (field.kind != FieldKind::fact) continue;
    FactValue fact = std::get<FactValue>(field.get(&load));
    if (!fact.value && !fact.low && !fact.high) continue;
    fact.grade = Grade::typical;
    field.set(&load, fact);
  }
  return load;
}

}  // namespace stayalight
