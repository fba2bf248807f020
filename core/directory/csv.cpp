#include "core/directory/csv.h"

#include <algorithm>
#include <array>
#include <charconv>

namespace stayalight {
namespace {

constexpr MessageId kTooBig{"csv.too_big"};
constexpr MessageId kOpenQuote{"csv.open_quote"};
constexpr MessageId kBehindQuote{"csv.behind_quote"};

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

/// What an apostrophe stands before: the signs of a formula, behind any number of apostrophes.
bool looksLikeFormula(std::string_view cell) {
  while (!cell.empty() && cell.front() == '\'') cell.remove_prefix(1);
  return !cell.empty() && std::string_view("=+-@\t\r\n").find(cell.front()) != std::string_view::npos;
}

bool needsQuotes(std::string_view cell) {
  if (cell.empty()) return false;
  return cell.find_first_of(",;\t\"\r\n") != std::string_view::npos || cell.front() == ' ' ||
         cell.back() == ' ';
}

char separatorOf(std::string_view text) {
  std::array<std::pair<char, int>, 3> counts = {{{',', 0}, {';', 0}, {'\t', 0}}};
  bool quoted = false;
  for (const char c : text) {
    if (c == '"') quoted = !quoted;
    if (quoted) continue;
    if (c == '\r' || c == '\n') break;
    for (auto& [separator, count] : counts) {
      if (c == separator) ++count;
    }
  }
  return std::max_element(counts.begin(), counts.end(),
                          [](const auto& a, const auto& b) { return a.second < b.second; })
      ->first;
}

class Reader {
 public:
  Reader(std::string_view text, const std::string& name, char separator)
      : text_(text), name_(name), separator_(separator) {}

  Result<CsvText> read() {
    CsvText out;
    out.separator = separator_;
    while (at_ < text_.size()) {
      CsvRecord record{line_, {}};
      const bool quoted = text_[at_] == '"';
      for (;;) {
        auto cell = readCell();
        if (!cell) return cell.refusal();
        record.cells.push_back(std::move(cell).value());
        if (at_ >= text_.size() || text_[at_] != separator_) break;
        ++at_;
      }
      takeLineEnd();
      const bool empty = !quoted && record.cells.size() == 1 && record.cells[0].empty();
      if (!empty) out.records.push_back(std::move(record));
    }
    return out;
  }

 private:
  Result<std::string> readCell() {
    if (at_ < text_.size() && text_[at_] == '"') return readQuoted();
    const std::size_t from = at_;
    while (at_ < text_.size() && text_[at_] != separator_ && text_[at_] != '\r' && text_[at_] != '\n') ++at_;
    return std::string(asTyped(text_.substr(from, at_ - from)));
  }

  Result<std::string> readQuoted() {
    const std::int64_t begins = line_;
    std::string cell;
    ++at_;
    for (;;) {
      if (at_ >= text_.size()) return say(kOpenQuote, name_, begins);
      const char c = text_[at_++];
      if (c == '"') {
        if (at_ >= text_.size() || text_[at_] != '"') break;
        ++at_;
      } else if (c == '\n' || (c == '\r' && (at_ >= text_.size() || text_[at_] != '\n'))) {
        ++line_;
      }
      cell += c;
    }
    if (at_ < text_.size() && text_[at_] != separator_ && text_[at_] != '\r' && text_[at_] != '\n')
      return say(kBehindQuote, name_, line_);
    return std::string(asTyped(cell));
  }

  void takeLineEnd() {
    if (at_ >= text_.size()) return;
    const char c = text_[at_++];
    if (c == '\r' && at_ < text_.size() && text_[at_] == '\n') ++at_;
    ++line_;
  }

  std::string_view text_;
  const std::string& name_;
  char separator_;
  std::size_t at_ = 0;
  std::int64_t line_ = 1;
};

}  // namespace

std::string withoutFormula(std::string_view cell) {
  return looksLikeFormula(cell) ? "'" + std::string(cell) : std::string(cell);
}

std::string_view asTyped(std::string_view cell) {
  if (!cell.empty() && cell.front() == '\'' && looksLikeFormula(cell)) cell.remove_prefix(1);
  return cell;
}

std::string numberCell(double number) {
  std::array<char, 32> digits{};
  return {digits.data(), std::to_chars(digits.data(), digits.data() + digits.size(), number).ptr};
}

std::string quotedCell(std::string_view cell) {
  std::string out = "\"";
  for (const char c : cell) {
    if (c == '"') out += '"';
    out += c;
  }
  return out + '"';
}

std::string writeCsv(const std::vector<std::vector<std::string>>& records) {
  std::string out;
  for (const auto& record : records) {
    for (std::size_t i = 0; i < record.size(); ++i) {
      if (i > 0) out += ',';
      const std::string cell = withoutFormula(record[i]);
      // A line of one empty cell would be no record at all.
      const bool plain = !needsQuotes(cell) && !(record.size() == 1 && cell.empty());
      out += plain ? cell : quotedCell(cell);
    }
    out += "\r\n";
  }
  return out;
}

Result<CsvText> readCsv(std::string_view text, const std::string& name) {
  if (text.substr(0, kByteOrderMark.size()) == kByteOrderMark) text.remove_prefix(kByteOrderMark.size());
  return readCsv(text, name, separatorOf(text));
}

Result<CsvText> readCsv(std::string_view text, const std::string& name, char separator) {
  if (text.size() > kMostCsvBytes) {
    return say(kTooBig, name, static_cast<std::int64_t>(text.size()),
               static_cast<std::int64_t>(kMostCsvBytes));
  }
  return Reader(text, name, separator).read();
}

}  // namespace stayalight
