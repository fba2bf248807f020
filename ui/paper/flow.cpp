#include "ui/paper/flow.h"

#include <QtCore/QDate>

#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kTitlePlan{"paper.title_plan"};
constexpr MessageId kTitleSheet{"paper.title_sheet"};
constexpr MessageId kTitleRevision{"paper.title_revision"};
constexpr MessageId kTitleDate{"paper.title_date"};
constexpr MessageId kTitleNumber{"paper.title_number"};
constexpr MessageId kNumberOf{"paper.number_of"};
constexpr MessageId kFootCode{"paper.foot_code"};
constexpr MessageId kFootCodeLocal{"paper.foot_code_local"};
constexpr MessageId kFootNoCode{"paper.foot_no_code"};
constexpr MessageId kProgram{"paper.program"};
constexpr MessageId kNoDate{"paper.no_date"};
constexpr MessageId kPageOf{"paper.page_of"};
constexpr MessageId kCustomer{"paper.job_customer"};
constexpr MessageId kFirm{"paper.job_firm"};
constexpr MessageId kLicence{"paper.job_licence"};
constexpr MessageId kDrawnBy{"paper.job_drawn_by"};
constexpr MessageId kPermit{"paper.job_permit"};
constexpr MessageId kPermitDate{"paper.job_permit_date"};

constexpr double kBlockHeight = 46.0;
constexpr double kNameSize = 14.0;
constexpr double kEndless = 1e6;
constexpr double kJobHeight = 13.0;               // the line of the title block that names the job
constexpr double kLineFactor = 1.28;              // line distance over type size
const QString kNumberSlot = QStringLiteral("#");  // stands in the title block until the set is counted

QString dateText(const std::string& iso, const Language& language) {
  const QDate date = QDate::fromString(QString::fromStdString(iso), Qt::ISODate);
  if (!date.isValid()) return iso.empty() ? words(language, kNoDate) : QString::fromStdString(iso);
  return QLocale(QLocale::English, QLocale::UnitedStates).toString(date, QStringLiteral("d MMMM yyyy"));
}

// Customer, firm, who drew it, permit: what of them is entered.
QString jobLine(const Site& site, const Language& language) {
  QStringList parts;
  const auto add = [&](MessageId what, const std::string& value) {
    if (!value.empty()) parts << words(language, what, value);
  };
  add(kCustomer, site.customer);
  add(kFirm, site.firm);
  add(kLicence, site.licence);
  add(kDrawnBy, site.drawnBy);
  add(kPermit, site.permitNumber);
  if (!site.permitDate.empty()) add(kPermitDate, dateText(site.permitDate, language).toStdString());
  return parts.join(QStringLiteral("  ·  "));
}

}  // namespace

SheetFlow::SheetFlow(const PaperOptions& options, const Site& site, const Language& language, QString kind,
                     QString name)
    : size_(pageSize(options.size)),
      kind_(std::move(kind)),
      name_(std::move(name)),
      site_(site),
      language_(language),
      options_(options),
      job_(jobLine(site, language)) {
  beginPage();
}

double SheetFlow::blockHeight() const { return kBlockHeight + (job_.isEmpty() ? 0.0 : kJobHeight); }

double SheetFlow::bottom() const { return size_.height() - margin_ - blockHeight() - 10.0; }

bool SheetFlow::need(double height) {
  if (y_ + height <= bottom()) return false;
  beginPage();
  return true;
}

double SheetFlow::heightOf(const std::function<void(SheetFlow&)>& draw) const {
  SheetFlow endless(options_, site_, language_, kind_, name_);
  endless.size_.setHeight(kEndless);
  const double from = endless.y();
  draw(endless);
  return endless.y() - from;
}

std::vector<Sheet> SheetFlow::take() {
  for (std::size_t page = 0; page < pages_.size(); ++page) writeHead(page);
  return std::move(pages_);
}

void SheetFlow::writeHead(std::size_t page) {
  const auto titled = [&](const QString& name) {
    if (pages_.size() == 1) return name;
    return words(language_, kPageOf, name.toStdString(), static_cast<std::int64_t>(page + 1),
                 static_cast<std::int64_t>(pages_.size()));
  };
  std::vector<SheetText>& texts = pages_[page].texts;
  const double baseline = margin_ + 16.0;
  const SheetText engraved{{left(), baseline}, kind_, Face::engraved, 17.0};
  texts.push_back(engraved);
  // A name that is too long is cut, the number of the page never.
  const double room = width() - engraved.extent().width() - 16.0 -
                      textWidth(titled(QString()), Face::condensed, kNameSize, Weight::bold);
  const QString name = elided(name_, room, Face::condensed, kNameSize, Weight::bold);
  texts.push_back(
      {{right(), baseline}, titled(name), Face::condensed, kNameSize, Weight::bold, false, Align::right});
}

void SheetFlow::beginPage() {
  Sheet sheet;
  sheet.size = size_;
  sheet.title = name_;
  pages_.push_back(std::move(sheet));

  const double top = margin_ + 16.0;
  rule({left(), top + 8.0}, {right(), top + 8.0}, 1.2);
  y_ = top + 20.0;

  const double blockTop = size_.height() - margin_ - blockHeight();
  box(QRectF(left(), blockTop, width(), blockHeight()), 0.9);
  const double line = blockTop + kBlockHeight - 13.0;
  rule({left(), line}, {right(), line});
  if (!job_.isEmpty()) {
    text(left() + 5.0, line + 9.5, job_, 7.6, Weight::regular, Align::left, width() - 10.0);
    rule({left(), line + kJobHeight}, {right(), line + kJobHeight});
  }
  struct Cell {
    MessageId head;
    QString value;
    double share;
  };
  const Cell cells[] = {
      {kTitlePlan, site_.name.empty() ? options_.planName : QString::fromStdString(site_.name), 0.27},
      {kTitleSheet, name_, 0.34},
      {kTitleRevision, QString::fromStdString(site_.revision), 0.15},
      {kTitleDate, dateText(site_.sheetDate, language_), 0.15},
      {kTitleNumber, kNumberSlot, 0.09},
  };
  double x = left();
  for (const Cell& cell : cells) {
    const double w = cell.share * width();
    if (x > left()) rule({x, blockTop}, {x, line});
    text(x + 5.0, blockTop + 10.0, words(language_, cell.head), 7.0);
    text(x + 5.0, blockTop + 25.0, cell.value, 9.5, Weight::medium, Align::left, w - 9.0);
    x += w;
  }
  const bool canada = site_.country.is(Country::canada);
  const std::string edition(site_.edition.word());
  const QString foot = canada ? words(language_, kFootNoCode)
                       : site_.amendments.empty()
                           ? words(language_, kFootCode, edition)
                           : words(language_, kFootCodeLocal, edition, site_.amendments);
  const QString program = words(language_, kProgram, options_.version.toStdString());
  const double programWidth = textWidth(program, Face::condensed, 7.0);
  text(left() + 5.0, blockTop + blockHeight() - 4.0, foot, 7.0, Weight::regular, Align::left,
       width() - programWidth - 20.0);
  text(right() - 5.0, blockTop + blockHeight() - 4.0, program, 7.0, Weight::regular, Align::right);
}

void SheetFlow::text(double x, double y, const QString& value, double size, Weight weight, Align align,
                     double width, bool italic) {
  if (value.isEmpty()) return;
  const QString shown = width > 0.0 ? elided(value, width, Face::condensed, size, weight, italic) : value;
  pages_.back().texts.push_back({{x, y}, shown, Face::condensed, size, weight, italic, align});
}

void SheetFlow::rule(QPointF from, QPointF to, double width) {
  pages_.back().rules.push_back({from, to, width});
}
void SheetFlow::box(const QRectF& rect, double stroke, bool grey) {
  pages_.back().boxes.push_back({rect, stroke, grey});
}
void SheetFlow::mark(SheetMark mark) { pages_.back().marks.push_back(mark); }

QStringList brokenLines(const QString& text, double width, double size, Weight weight) {
  QStringList lines;
  for (const QString& paragraph : text.split(u'\n')) {
    QString line;
    for (const QString& word : paragraph.split(u' ', Qt::SkipEmptyParts)) {
      const QString longer = line.isEmpty() ? word : line + u' ' + word;
      if (line.isEmpty() || textWidth(longer, Face::condensed, size, weight) <= width) {
        line = longer;
        continue;
      }
      lines << line;
      line = word;
    }
    if (!line.isEmpty()) lines << line;
  }
  return lines;
}

double SheetFlow::paragraphHeight(double width, const QString& text, double size, Weight weight) const {
  return static_cast<double>(brokenLines(text, width, size, weight).size()) * size * kLineFactor;
}

double SheetFlow::paragraph(double x, double y, double width, const QString& value, double size,
                            Weight weight) {
  const QStringList lines = brokenLines(value, width, size, weight);
  double baseline = y + size;
  for (const QString& line : lines) {
    text(x, baseline, line, size, weight, Align::left, width);
    baseline += size * kLineFactor;
  }
  return static_cast<double>(lines.size()) * size * kLineFactor;
}

void numberPages(std::vector<Sheet>& sheets, const Language& language) {
  const auto count = static_cast<std::int64_t>(sheets.size());
  std::int64_t number = 0;
  for (Sheet& sheet : sheets) {
    ++number;
    for (SheetText& text : sheet.texts) {
      if (text.text == kNumberSlot) text.text = words(language, kNumberOf, number, count);
    }
  }
}

}  // namespace stayalight
