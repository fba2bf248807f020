#include <algorithm>
#include <map>

#include "core/message/formulas/sections.h"

namespace stayalight {
namespace {

bool isWord(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_';
}

}  // namespace

const std::vector<FormulaRow>& formulas() {
  static const std::vector<FormulaRow> rows = [] {
    std::vector<FormulaRow> all;
    for (const auto& section : {formulas_of::use, formulas_of::demand, formulas_of::start,
                                formulas_of::wiring, formulas_of::outage}) {
      all.insert(all.end(), section.begin(), section.end());
    }
    return all;
  }();
  return rows;
}

const FormulaRow* formulaOf(FormulaId id) {
  for (const FormulaRow& row : formulas()) {
    if (row.key == id.key) return &row;
  }
  return nullptr;
}

std::vector<std::string> evaluableNames(const Step& step) {
  std::map<std::string_view, int> total;
  for (const StepInput& input : step.inputs) ++total[input.symbol];
  std::map<std::string_view, int> seen;
  std::vector<std::string> names;
  for (const StepInput& input : step.inputs) {
    std::string name(input.symbol);
    if (total[input.symbol] > 1) name += "_" + std::to_string(++seen[input.symbol]);
    names.push_back(std::move(name));
  }
  return names;
}

std::string evaluableExpression(const Step& step) {
  const FormulaRow* row = formulaOf(step.formula);
  if (row == nullptr) return {};
  // Inside sum(), max() and min() an expression is repeated for every numbered input; elsewhere it stands as
  // printed.
  const std::vector<std::string> names = evaluableNames(step);
  std::map<std::string_view, std::vector<std::string>> numbered;
  for (std::size_t i = 0; i < names.size(); ++i) numbered[step.inputs[i].symbol].push_back(names[i]);

  const std::string_view text = row->expression;
  std::string out;
  for (std::size_t i = 0; i < text.size();) {
    bool repeated = false;
    for (const std::string_view opening :
         {std::string_view("sum("), std::string_view("max("), std::string_view("min(")}) {
      if (text.substr(i, opening.size()) != opening) continue;
      std::size_t end = i + opening.size();
      for (int depth = 1; end < text.size(); ++end) {
        if (text[end] == '(') ++depth;
        if (text[end] == ')' && --depth == 0) break;
      }
      const std::string_view body = text.substr(i + opening.size(), end - i - opening.size());
      if (body.find(',') != std::string_view::npos) break;  // an ordinary call with its arguments written out
      std::size_t copies = 1;
      for (const auto& [symbol, all] : numbered) {
        if (all.size() > 1 && body.find(symbol) != std::string_view::npos)
          copies = std::max(copies, all.size());
      }
      out += opening;
      for (std::size_t copy = 0; copy < copies; ++copy) {
        if (copy > 0) out += ", ";
        for (std::size_t k = 0; k < body.size();) {
          if (!isWord(body[k])) {
            out += body[k++];
            continue;
          }
          std::size_t w = k;
          while (w < body.size() && isWord(body[w])) ++w;
          const std::string_view word = body.substr(k, w - k);
          const auto found = numbered.find(word);
          if (found != numbered.end() && found->second.size() > copy)
            out += found->second[copy];
          else
            out += word;
          k = w;
        }
      }
      out += ")";
      i = end + 1;
      repeated = true;
      break;
    }
    if (!repeated) out += text[i++];
  }
  return out;
}

}  // namespace stayalight
