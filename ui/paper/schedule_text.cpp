#include "ui/paper/schedule_text.h"

#include <algorithm>

#include "ui/paper/flow.h"

namespace stayalight {
namespace {

constexpr double kCapital = 0.72;  // of the type size
constexpr double kDescent = 0.20;
constexpr double kPitch = 1.13;  // line distance over type size within one text
constexpr qsizetype kNameLines = 2;
constexpr qsizetype kPurposeLines = 4;

// Lines beyond the last one allowed are joined to it and cut with an ellipsis.
QStringList brokenWithin(const QString& text, double width, double size, Weight weight, bool italic,
                         qsizetype most) {
  QStringList lines = brokenLines(text, width, size, weight);
  if (lines.size() > most) lines = lines.mid(0, most - 1) << lines.mid(most - 1).join(u' ');
  for (QString& line : lines) line = elided(line, width, Face::condensed, size, weight, italic);
  return lines;
}

class LineByLine {
 public:
  void line(const QString& text, double x, double size, Weight weight, bool italic = false,
            Align align = Align::left) {
    baseline_ += out_.texts.empty() ? kCapital * size : kPitch * size;
    add(text, x, size, weight, italic, align);
  }
  // On the line that stands.
  void add(const QString& text, double x, double size, Weight weight, bool italic = false,
           Align align = Align::left) {
    out_.texts.push_back({{x, baseline_}, text, Face::condensed, size, weight, italic, align});
    out_.height = std::max(out_.height, baseline_ + kDescent * size);
  }
  [[nodiscard]] FieldText take() { return std::move(out_); }

 private:
  FieldText out_;
  double baseline_ = 0.0;
};

}  // namespace

FieldText fieldText(const ScheduleLine& line, double width, PurposePlace place) {
  const bool half = !line.half.isEmpty();
  const double nameSize = half ? 8.0 : line.moved ? 8.4 : 8.8;
  const double purposeSize = half ? 7.0 : 7.2;
  const Weight weight = line.plain || line.moved ? Weight::regular : Weight::bold;
  const QString name = half ? line.half + QStringLiteral("  ") + line.name : line.name;
  LineByLine out;
  const QStringList names = brokenWithin(name, width, nameSize, weight, line.moved, kNameLines);
  for (const QString& each : names) out.line(each, 0.0, nameSize, weight, line.moved);
  // What a moved circuit's `serves` says stands in the fields beside the name.
  if (line.moved || line.serves.isEmpty()) return out.take();

  QString purpose = line.serves;
  if (place == PurposePlace::behind && !names.isEmpty()) {
    constexpr double kGap = 4.0;
    const double x = textWidth(names.back(), Face::condensed, nameSize, weight) + kGap;
    const QStringList all = purpose.split(u' ', Qt::SkipEmptyParts);
    QStringList behind;
    for (const QString& word : all) {
      const QString longer = (behind + QStringList(word)).join(u' ');
      if (x + textWidth(longer, Face::condensed, purposeSize, Weight::regular) > width) break;
      behind << word;
    }
    if (!behind.isEmpty()) out.add(behind.join(u' '), x, purposeSize, Weight::regular);
    purpose = all.mid(behind.size()).join(u' ');
  }
  for (const QString& each : brokenWithin(purpose, width, purposeSize, Weight::regular, false, kPurposeLines))
    out.line(each, 0.0, purposeSize, Weight::regular);
  return out.take();
}

FieldText stackedText(const std::vector<SheetText>& paragraphs, double width) {
  LineByLine out;
  for (const SheetText& each : paragraphs) {
    for (const QString& line : brokenWithin(each.text, width, each.size, each.weight, false, kPurposeLines))
      out.line(line, 0.0, each.size, each.weight, false, Align::centre);
  }
  return out.take();
}

}  // namespace stayalight
