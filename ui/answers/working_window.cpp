#include "ui/answers/working_window.h"

#include <QtCore/QUrl>
#include <QtGui/QClipboard>
#include <QtGui/QContextMenuEvent>
#include <QtGui/QGuiApplication>
#include <QtGui/QPainter>
#include <QtGui/QTextDocumentFragment>
#include <QtWidgets/QHBoxLayout>
#include <QtWidgets/QLabel>
#include <QtWidgets/QMenu>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QTextBrowser>
#include <QtWidgets/QVBoxLayout>
#include <algorithm>
#include <cmath>
#include <span>

#include "ui/answers/figure_copy.h"
#include "ui/style/application.h"
#include "ui/wording/language.h"
#include "ui/wording/notation.h"

namespace stayalight {
namespace {

constexpr MessageId kTitle{"answers.working.title"};
constexpr MessageId kCopy{"answers.working.copy"};
constexpr MessageId kClose{"answers.working.close"};
constexpr MessageId kStep{"answers.working.step"};
constexpr MessageId kEdition{"answers.working.edition"};
constexpr MessageId kRule{"answers.working.rule"};
constexpr MessageId kSource{"answers.working.source"};
constexpr MessageId kGoverns{"answers.working.governs"};
constexpr MessageId kNothing{"answers.working.nothing"};
constexpr MessageId kColumnSymbol{"answers.working.symbol"};
constexpr MessageId kColumnValue{"answers.working.value"};
constexpr MessageId kColumnFrom{"answers.working.from"};
constexpr MessageId kColumnGrade{"answers.working.grade"};

bool ofRoom(const Step& step, std::span<const std::string_view> rooms) {
  const std::string_view key = step.formula.key;
  return std::any_of(rooms.begin(), rooms.end(), [&](std::string_view room) {
    return key.size() > room.size() && key.substr(0, room.size()) == room && key[room.size()] == '.';
  });
}
// What a result written as HTML says: its spaces and entities are a browser's.
QString plainText(const QString& html) {
  return QTextDocumentFragment::fromHtml(html).toPlainText().simplified();
}

bool same(double a, double b) { return std::abs(a - b) <= 1e-9 * (1.0 + std::abs(b)); }

/// The figure itself: it has the keyboard so that Ctrl+C copies it, and shows that.
class FigureLabel final : public QLabel {
 public:
  FigureLabel(const Palette& palette, QWidget* parent) : QLabel(parent), palette_(palette) {}

 protected:
  void paintEvent(QPaintEvent* event) override {
    QLabel::paintEvent(event);
    if (!hasFocus()) return;
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(palette_.color(ColorRole::lamp), 1.5));
    painter.drawRoundedRect(QRectF(rect()).adjusted(0.75, 0.75, -0.75, -0.75), 3, 3);
  }

 private:
  Palette palette_;
};

}  // namespace

std::vector<Step> stepsFor(const Working& working, const WorkingTarget& target) {
  const auto all = working.steps();
  std::vector<std::size_t> places;
  const auto ofTarget = [&](const Step& step) {
    if (!ofRoom(step, target.rooms)) return false;
    const WorkingSubject* const subject = working.subjectOf(step);
    return !target.about || (subject != nullptr && *subject == *target.about);
  };
  bool found = false;
  for (const double value : target.values) {
    // The last step with that result is the one the figure was read from.
    for (std::size_t i = all.size(); i-- > 0;) {
      if (!ofTarget(all[i]) || !same(all[i].result, value)) continue;
      if (target.note && !(all[i].note == *target.note)) continue;
      places.push_back(i);
      found = true;
      break;
    }
  }
  if ((!found && !target.note) || (target.about && target.wholeSubject)) {
    for (std::size_t i = 0; i < all.size(); ++i) {
      if (target.about ? ofTarget(all[i]) : !target.rooms.empty() && ofRoom(all[i], {target.rooms.data(), 1}))
        places.push_back(i);
    }
  }
  return picked(all, withWhatTheyRestOn(all, places));
}

QString workingText(const WorkingTarget& target, const std::vector<Step>& steps, const Language& language) {
  QString text = target.title + QLatin1String(": ") + target.shown + QLatin1Char('\n');
  for (const WorkedStep& step : workedSteps(steps, language, Notation::plain)) {
    text += QLatin1Char('\n') + words(language, kStep, std::int64_t{step.number}) + QLatin1String("  ") +
            step.formula + QLatin1Char('\n');
    text += QLatin1String("   = ") + step.filled + QLatin1String(" = ") + step.result + QLatin1Char('\n');
    for (const WorkedInput& input : step.inputs) {
      text += QLatin1String("   ") + input.symbol + QLatin1String(" = ") + input.value + QLatin1String("  ") +
              input.from;
      if (!input.grade.isEmpty()) text += QLatin1String(" (") + input.grade + QLatin1Char(')');
      text += QLatin1Char('\n');
    }
    if (!step.rule.isEmpty())
      text += QLatin1String("   ") + words(language, kRule, step.rule.toStdString()) + QLatin1Char('\n');
    if (!step.source.isEmpty())
      text += QLatin1String("   ") + words(language, kSource, step.source.toStdString()) + QLatin1Char('\n');
    if (!step.note.isEmpty())
      text += QLatin1String("   ") + words(language, kGoverns, step.note.toStdString()) + QLatin1Char('\n');
  }
  return text;
}

WorkingWindow::WorkingWindow(const WorkingTarget& target, const Assessment& recorded, const QString& edition,
                             const Language& language, const Palette& palette, QWidget* parent)
    : QDialog(parent), figure_(figureAsText(target.title, target.shown)), language_(language) {
  setWindowTitle(words(language, kTitle));
  setObjectName(QStringLiteral("workingWindow"));
  resize(scaled(620), scaled(560));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(24, 20, 24, 16);
  auto* small = new QLabel(words(language, kTitle), this);
  small->setFont(screenFont(Face::condensed, 12));
  column->addWidget(small);
  auto* head = new FigureLabel(palette, this);
  head->setObjectName(QStringLiteral("figure"));
  head->setFont(screenFont(Face::condensed, 18, Weight::medium));
  head->setWordWrap(true);
  head->setTextFormat(Qt::PlainText);
  head->setText(target.shown + QLatin1String("   ") + target.title);
  head->setAccessibleName(figure_);
  head->setFocusPolicy(Qt::TabFocus);
  head->installEventFilter(this);
  column->addWidget(head);
  view_ = new QTextBrowser(this);
  view_->setObjectName(QStringLiteral("steps"));
  view_->setOpenLinks(false);
  view_->installEventFilter(this);
  view_->setContextMenuPolicy(Qt::CustomContextMenu);
  // A result is a link: Tab goes from one to the next, and Ctrl+C copies the one it is on.
  const auto resultAt = [this](const QUrl& link) { return results_.value(link.toString()); };
  connect(view_, &QTextBrowser::anchorClicked, this,
          [resultAt](const QUrl& link) { copyFigure(resultAt(link)); });
  connect(view_, &QTextBrowser::customContextMenuRequested, this, [this, resultAt](QPoint at) {
    const QString result = resultAt(QUrl(view_->anchorAt(at)));
    if (!result.isEmpty()) return openFigureMenu(view_, view_->mapToGlobal(at), result, language_, {});
    QMenu* menu = view_->createStandardContextMenu(at);
    menu->setAttribute(Qt::WA_DeleteOnClose);
    menu->popup(view_->mapToGlobal(at));
  });
  view_->setAccessibleName(words(language, kTitle));
  column->addWidget(view_, 1);

  const std::vector<Step> steps = stepsFor(recorded.working, target);
  text_ = workingText(target, steps, language);
  const QString sections = edition.isEmpty() ? QString() : words(language, kEdition, edition.toStdString());
  if (!sections.isEmpty()) text_ += QLatin1Char('\n') + sections + QLatin1Char('\n');
  const QString ink3 = palette.color(ColorRole::ink3).name();
  QString html;
  const auto text = [](const QString& plain) { return plain.toHtmlEscaped(); };
  for (const WorkedStep& step : workedSteps(steps, language, Notation::html)) {
    html += QStringLiteral(
                "<p style='margin-top:10px;margin-bottom:2px'><b>%1</b>&nbsp; %2<br>&nbsp;&nbsp;&nbsp;= %3 = "
                "<b><a href='result:%6' style='color:%5'>%4</a></b></p>")
                .arg(text(words(language, kStep, std::int64_t{step.number})), step.formula, step.filled,
                     step.result, palette.color(ColorRole::ink).name(), QString::number(step.number));
    results_.insert(QStringLiteral("result:%1").arg(step.number), plainText(step.result));
    html += QStringLiteral(
                "<table cellspacing='0' cellpadding='2' "
                "style='color:%1'><tr><td>%2</td><td>%3</td><td>%4</td><td>%5</td></tr>")
                .arg(ink3, text(words(language, kColumnSymbol)), text(words(language, kColumnValue)),
                     text(words(language, kColumnFrom)), text(words(language, kColumnGrade)));
    for (const WorkedInput& input : step.inputs) {
      html += QStringLiteral(
                  "<tr style='color:%1'><td>%2&nbsp;&nbsp;</td><td "
                  "align='right'>%3&nbsp;&nbsp;</td><td>%4&nbsp;&nbsp;</td><td>%5</td></tr>")
                  .arg(palette.color(ColorRole::ink).name(), input.symbol, input.value, text(input.from),
                       text(input.grade));
    }
    html += QLatin1String("</table>");
    QStringList below;
    if (!step.note.isEmpty()) below << text(words(language, kGoverns, step.note.toStdString()));
    if (!step.rule.isEmpty()) below << text(words(language, kRule, step.rule.toStdString()));
    if (!step.source.isEmpty()) below << text(words(language, kSource, step.source.toStdString()));
    html += QStringLiteral("<p style='margin-top:2px;color:%1'>%2</p><hr>")
                .arg(palette.color(ColorRole::ink2).name(), below.join(QLatin1String("<br>")));
  }
  if (steps.empty()) {
    html = QStringLiteral("<p>%1</p>").arg(text(words(language, kNothing)));
  } else if (!sections.isEmpty()) {
    html += QStringLiteral("<p style='color:%1'>%2</p>")
                .arg(palette.color(ColorRole::ink2).name(), text(sections));
  }
  view_->setHtml(html);

  auto* buttons = new QHBoxLayout;
  auto* copy = new QPushButton(words(language, kCopy), this);
  copy->setObjectName(QStringLiteral("copy"));
  copy->setAutoDefault(false);
  connect(copy, &QPushButton::clicked, this, [this] { QGuiApplication::clipboard()->setText(text_); });
  auto* close = new QPushButton(words(language, kClose), this);
  close->setObjectName(QStringLiteral("close"));
  close->setDefault(true);
  connect(close, &QPushButton::clicked, this, &QDialog::accept);
  buttons->addWidget(copy);
  buttons->addStretch(1);
  buttons->addWidget(close);
  column->addLayout(buttons);
}

bool WorkingWindow::eventFilter(QObject* watched, QEvent* event) {
  // Before the shortcut of the same key, which copies circuits.
  if (event->type() == QEvent::ShortcutOverride && isCopyKey(event)) {
    event->accept();
    return true;
  }
  if (watched == view_) return QDialog::eventFilter(watched, event);
  if (event->type() == QEvent::KeyPress && isCopyKey(event)) {
    copyFigure(figure_);
    return true;
  }
  if (event->type() == QEvent::ContextMenu) {
    openFigureMenu(this, static_cast<QContextMenuEvent*>(event)->globalPos(), figure_, language_, {});
    return true;
  }
  return QDialog::eventFilter(watched, event);
}

}  // namespace stayalight
