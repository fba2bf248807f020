#include "ui/wording/notation.h"

#include <cmath>

#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kStep{"wording.step"};

struct Letter {
  std::string_view name;
  char16_t sign;
};
constexpr std::array<Letter, 12> kGreek = {{{"alpha", u'α'},
                                            {"beta", u'β'},
                                            {"delta", u'δ'},
                                            {"eta", u'η'},
                                            {"theta", u'θ'},
                                            {"lambda", u'λ'},
                                            {"mu", u'μ'},
                                            {"pi", u'π'},
                                            {"rho", u'ρ'},
                                            {"sigma", u'σ'},
                                            {"phi", u'φ'},
                                            {"omega", u'ω'}}};

bool wordStart(char c) { return std::isalpha(static_cast<unsigned char>(c)) || c == '_'; }
bool wordPart(char c) { return std::isalnum(static_cast<unsigned char>(c)) || c == '_'; }
bool digit(char c) { return std::isdigit(static_cast<unsigned char>(c)) || c == '.'; }

// Where the parenthesis that opens at `open` closes.
std::size_t closing(std::string_view text, std::size_t open) {
  int depth = 0;
  for (std::size_t i = open; i < text.size(); ++i) {
    if (text[i] == '(') ++depth;
    if (text[i] == ')' && --depth == 0) return i;
  }
  return text.size();
}

bool single(std::string_view text) {
  for (const char c : text) {
    if (!wordPart(c) && c != '.') return false;
  }
  return true;
}

QString raised(const QString& power, Notation notation) {
  if (notation == Notation::html) return QStringLiteral("<sup>") + power + QStringLiteral("</sup>");
  if (power == QStringLiteral("2")) return QStringLiteral("²");
  if (power == QStringLiteral("3")) return QStringLiteral("³");
  return QStringLiteral("^") + power;
}

class Writer {
 public:
  Writer(Notation notation, const std::function<QString(std::string_view)>& valueOf)
      : notation_(notation), valueOf_(valueOf) {}

  QString write(std::string_view text) const {
    QString out;
    bool operandBefore = false;
    for (std::size_t i = 0; i < text.size();) {
      const char c = text[i];
      if (c == ' ') {
        ++i;
      } else if (wordStart(c)) {
        std::size_t end = i;
        while (end < text.size() && wordPart(text[end])) ++end;
        const std::string_view word = text.substr(i, end - i);
        if (end < text.size() && text[end] == '(') {
          const std::size_t close = closing(text, end);
          out += call(word, text.substr(end + 1, close - end - 1));
          i = std::min(close + 1, text.size());
        } else {
          out += symbol(word);
          i = end;
        }
        operandBefore = true;
      } else if (digit(c)) {
        std::size_t end = i;
        while (end < text.size() && digit(text[end])) ++end;
        out += QString::fromLatin1(text.data() + i, static_cast<qsizetype>(end - i));
        i = end;
        operandBefore = true;
      } else if (c == '(') {
        const std::size_t close = closing(text, i);
        out += QLatin1Char('(') + write(text.substr(i + 1, close - i - 1)) + QLatin1Char(')');
        i = std::min(close + 1, text.size());
        operandBefore = true;
      } else if (c == '^') {
        ++i;
        while (i < text.size() && text[i] == ' ') ++i;
        std::size_t end = i;
        if (i < text.size() && text[i] == '(') {
          end = closing(text, i);
          out += raised(write(text.substr(i + 1, end - i - 1)), notation_);
          i = std::min(end + 1, text.size());
        } else {
          while (end < text.size() && (wordPart(text[end]) || text[end] == '.')) ++end;
          out += raised(write(text.substr(i, end - i)), notation_);
          i = end;
        }
      } else {
        out += sign(text, i, operandBefore);
        operandBefore = false;
      }
    }
    return out;
  }

 private:
  QString symbol(std::string_view word) const {
    if (valueOf_) {
      if (QString value = valueOf_(word); !value.isEmpty()) return value;
    }
    return symbolText(word, notation_);
  }
  QString call(std::string_view function, std::string_view inside) const {
    const QString body = write(inside);
    const bool bare = single(inside);
    if (function == "sqrt")
      return bare ? QString(QStringLiteral("√") + body)
                  : QString(QStringLiteral("√(") + body + QLatin1Char(')'));
    if (function == "sum") {
      // Written out with values it is an ordinary sum.
      if (inside.find(',') != std::string_view::npos)
        return QLatin1Char('(') + QString(body).replace(QStringLiteral("; "), QStringLiteral(" + ")) +
               QLatin1Char(')');
      return bare ? QString(QStringLiteral("Σ ") + body)
                  : QString(QStringLiteral("Σ(") + body + QLatin1Char(')'));
    }
    if (function == "abs") return QLatin1Char('|') + body + QLatin1Char('|');
    return QString::fromLatin1(function.data(), static_cast<qsizetype>(function.size())) + QLatin1Char('(') +
           body + QLatin1Char(')');
  }
  static QString sign(std::string_view text, std::size_t& i, bool operandBefore) {
    struct Two {
      std::string_view from;
      const char16_t* to;
    };
    static constexpr std::array<Two, 6> kTwo = {
        {{"<=", u" ≤ "}, {">=", u" ≥ "}, {"==", u" = "}, {"!=", u" ≠ "}, {"&&", u" and "}, {"||", u" or "}}};
    for (const Two& two : kTwo) {
      if (text.substr(i, 2) == two.from) {
        i += 2;
        return QString::fromUtf16(two.to);
      }
    }
    const char c = text[i++];
    switch (c) {
      case '*':
        return QStringLiteral(" · ");
      case '/':
        return QStringLiteral(" / ");
      case '+':
        return QStringLiteral(" + ");
      case '-':
        return operandBefore ? QStringLiteral(" − ") : QStringLiteral("−");
      case '<':
        return QStringLiteral(" < ");
      case '>':
        return QStringLiteral(" > ");
      case '?':
        return QStringLiteral(" ? ");
      case ':':
        return QStringLiteral(" : ");
      case ',':
        return QStringLiteral("; ");
      default:
        return QString(QLatin1Char(c));
    }
  }

  Notation notation_;
  const std::function<QString(std::string_view)>& valueOf_;
};

QString escaped(const QString& text, Notation notation) {
  return notation == Notation::html ? text.toHtmlEscaped() : text;
}

}  // namespace

QString symbolText(std::string_view symbol, Notation notation) {
  const std::size_t bar = symbol.find('_');
  const std::string_view head = symbol.substr(0, bar);
  QString name = QString::fromLatin1(head.data(), static_cast<qsizetype>(head.size()));
  for (const Letter& letter : kGreek) {
    if (head == letter.name) name = QString(QChar(letter.sign));
  }
  QString index;
  if (bar != std::string_view::npos) {
    index = QString::fromLatin1(symbol.data() + bar + 1, static_cast<qsizetype>(symbol.size() - bar - 1));
    index.replace(QLatin1Char('_'), QLatin1Char(','));
  }
  if (notation == Notation::plain) return index.isEmpty() ? name : QString(name + QLatin1Char('_') + index);
  const QString italic = QStringLiteral("<i>") + name + QStringLiteral("</i>");
  return index.isEmpty() ? italic
                         : QString(italic + QStringLiteral("<sub>") + index + QStringLiteral("</sub>"));
}

QString formulaText(std::string_view expression, Notation notation) {
  return formulaText(expression, notation, nullptr);
}

QString formulaText(std::string_view expression, Notation notation,
                    const std::function<QString(std::string_view)>& valueOf) {
  return Writer(notation, valueOf).write(expression);
}

QString workedNumber(double value, const Language& language) {
  if (!std::isfinite(value)) return QStringLiteral("–");
  const double size = std::abs(value);
  int decimals = 0;
  if (size > 0.0) decimals = std::clamp(3 - static_cast<int>(std::floor(std::log10(size))), 0, 6);
  // Zeros at the end say nothing.
  while (decimals > 0) {
    const double scale = std::pow(10.0, decimals - 1);
    if (std::abs(std::round(value * scale) / scale - value) > 0.5 * std::pow(10.0, -6) * std::max(1.0, size))
      break;
    --decimals;
  }
  return QString::fromStdString(language.number(value, decimals));
}

std::vector<std::size_t> withWhatTheyRestOn(std::span<const Step> steps,
                                            const std::vector<std::size_t>& places) {
  std::vector<bool> wanted(steps.size(), false);
  const std::function<void(std::size_t)> take = [&](std::size_t at) {
    if (wanted[at]) return;
    wanted[at] = true;
    for (const StepInput& input : steps[at].inputs) {
      if (input.step >= 0 && static_cast<std::size_t>(input.step) < steps.size())
        take(static_cast<std::size_t>(input.step));
    }
  };
  for (const std::size_t place : places) take(place);
  std::vector<std::size_t> all;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    if (wanted[i]) all.push_back(i);
  }
  return all;
}

std::vector<Step> picked(std::span<const Step> steps, const std::vector<std::size_t>& places) {
  std::vector<StepIndex> renumbered(steps.size(), kNoStep);
  for (std::size_t i = 0; i < places.size(); ++i) renumbered[places[i]] = static_cast<StepIndex>(i);
  std::vector<Step> out;
  out.reserve(places.size());
  for (const std::size_t place : places) {
    out.push_back(steps[place]);
    for (StepInput& input : out.back().inputs) {
      if (input.step != kNoStep) input.step = renumbered[static_cast<std::size_t>(input.step)];
    }
  }
  return out;
}

std::vector<WorkedStep> workedSteps(std::span<const Step> steps, const Language& language,
                                    Notation notation) {
  std::vector<WorkedStep> out;
  out.reserve(steps.size());
  for (const Step& step : steps) {
    WorkedStep shown;
    shown.number = static_cast<int>(out.size()) + 1;
    const auto withUnit = [&](double value, std::string_view unit) {
      const QString number = workedNumber(value, language);
      return unit.empty() ? number
                          : QString(number + QLatin1Char(' ') +
                                    QString::fromUtf8(unit.data(), static_cast<qsizetype>(unit.size())));
    };
    if (const FormulaRow* row = formulaOf(step.formula)) {
      shown.formula =
          symbolText(row->result, notation) + QStringLiteral(" = ") + formulaText(row->expression, notation);
      shown.source = escaped(
          QString::fromUtf8(row->source.data(), static_cast<qsizetype>(row->source.size())), notation);
      const std::vector<std::string> names = evaluableNames(step);
      const auto valueOf = [&](std::string_view symbol) -> QString {
        for (std::size_t i = 0; i < names.size(); ++i) {
          if (names[i] != symbol) continue;
          const QString value = workedNumber(step.inputs[i].value, language);
          return step.inputs[i].value < 0.0 ? QString(QLatin1Char('(') + value + QLatin1Char(')')) : value;
        }
        return {};
      };
      shown.filled = formulaText(evaluableExpression(step), notation, valueOf);
    }
    shown.result = withUnit(step.result, step.unit);
    if (!step.rule.key.empty())
      shown.rule = escaped(QString::fromStdString(language.citation(step.rule)), notation);
    if (!step.note.id.key.empty()) shown.note = escaped(words(step.note, language), notation);
    for (const StepInput& input : step.inputs) {
      WorkedInput row;
      row.symbol = symbolText(input.symbol, notation);
      row.value = withUnit(input.value, input.unit);
      row.from = input.step == kNoStep ? escaped(QString::fromStdString(input.from), notation)
                                       : words(language, kStep, std::int64_t{input.step} + 1);
      if (input.grade) row.grade = gradeName(*input.grade, language);
      shown.inputs.push_back(std::move(row));
    }
    out.push_back(std::move(shown));
  }
  return out;
}

}  // namespace stayalight
