#include "ui/survey/survey_delegate.h"

#include <QtGui/QKeyEvent>
#include <QtGui/QPainter>
#include <QtGui/QPainterPath>
#include <QtWidgets/QCompleter>
#include <QtWidgets/QHeaderView>
#include <QtWidgets/QLineEdit>
#include <algorithm>
#include <cmath>

#include "ui/style/application.h"
#include "ui/style/icons.h"
#include "ui/style/marks.h"
#include "ui/survey/survey_table.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr double kHeadText = 12.0;
constexpr double kPad = 6.0;
constexpr double kMark = 13.0;
constexpr int kRowHeight = 24;
constexpr int kHeadHeight = 26;
constexpr int kGutter = 30;

/// The painter goes over to layout units, with the cell's corner as origin; the cell in them.
QRectF inUnits(QPainter& painter, const QRect& cell) {
  painter.translate(cell.topLeft());
  painter.scale(systemScale(), systemScale());
  return {0.0, 0.0, cell.width() / systemScale(), cell.height() / systemScale()};
}

// Columns that begin a group of their own get a rule before them.
bool beginsGroup(GridColumn column) {
  return column == GridColumn::name || column == GridColumn::conductor || column == GridColumn::running ||
         column == GridColumn::who || column == GridColumn::goesTo || column == GridColumn::finding;
}

/// Flat heads with the rules of the sheet.
class FlatHead final : public QHeaderView {
 public:
  FlatHead(SurveyTable* table) : QHeaderView(Qt::Horizontal, table), table_(table) {
    setSectionsClickable(true);
    setHighlightSections(false);
    setMinimumSectionSize(scaled(36));
    setFixedHeight(scaled(kHeadHeight));
  }

 protected:
  void paintSection(QPainter* painter, const QRect& rect, int section) const override {
    const Palette& palette = table_->colors();
    painter->save();
    painter->fillRect(rect, palette.color(ColorRole::window));
    const QRectF r = inUnits(*painter, rect);
    const auto column = static_cast<GridColumn>(section);
    const bool current = table_->currentColumn() == column && table_->currentIndex().isValid();
    painter->setFont(stayalight::font(Face::condensed, kHeadText, Weight::medium));
    painter->setPen(palette.color(current ? ColorRole::ink : ColorRole::ink2));
    const QString text = elided(table_->survey()->columnName(column), r.width() - 2 * kPad, Face::condensed,
                                kHeadText, Weight::medium);
    const Qt::Alignment side = columnRow(column).figure ? Qt::AlignRight : Qt::AlignLeft;
    painter->drawText(r.adjusted(kPad, 0, -kPad, 0), side | Qt::AlignVCenter, text);
    painter->setPen(QPen(palette.color(ColorRole::ink), 1.2));
    painter->drawLine(QPointF(r.left(), r.bottom() - 0.6), QPointF(r.right(), r.bottom() - 0.6));
    if (beginsGroup(column)) {
      painter->setPen(QPen(palette.color(ColorRole::edge), 1));
      painter->drawLine(QPointF(r.left() + 0.5, r.top() + 4), QPointF(r.left() + 0.5, r.bottom() - 1));
    }
    painter->restore();
  }

 private:
  SurveyTable* table_;
};

/// Beside the rows: the row of the keyboard, and brackets of shared neutrals.
class Gutter final : public QHeaderView {
 public:
  explicit Gutter(SurveyTable* table) : QHeaderView(Qt::Vertical, table), table_(table) {
    setSectionsClickable(true);
    setHighlightSections(false);
    setSectionResizeMode(QHeaderView::Fixed);
    setMinimumSectionSize(scaled(18));
    setDefaultSectionSize(scaled(kRowHeight));
    setFixedWidth(scaled(kGutter));
  }

 protected:
  void paintSection(QPainter* painter, const QRect& rect, int section) const override {
    const Palette& palette = table_->colors();
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    const bool lit = section < table_->survey()->rows() && table_->survey()->backedUp(section);
    painter->fillRect(rect, palette.color(lit ? ColorRole::lit : ColorRole::sheet));
    const QRectF r = inUnits(*painter, rect);
    painter->setPen(QPen(palette.color(ColorRole::hairline), 1));
    painter->drawLine(QPointF(r.left(), r.bottom() - 0.5), QPointF(r.right(), r.bottom() - 0.5));
    if (table_->currentIndex().row() == section)
      painter->fillRect(QRectF(r.left(), r.top(), 4, r.height()), palette.color(ColorRole::ink));
    if (section < table_->survey()->rows()) {
      const TieMark& tie = table_->survey()->tie(section);
      const double x = r.left() + (tie.lane == 0 ? 0.45 : 0.7) * r.width();
      const double middle = r.center().y();
      painter->setPen(QPen(palette.color(tie.danger ? ColorRole::danger : ColorRole::ink2), 1.5));
      if (tie.up) painter->drawLine(QPointF(x, r.top()), QPointF(x, middle));
      if (tie.down) painter->drawLine(QPointF(x, middle), QPointF(x, r.bottom() + 1));
      if (tie.member) painter->drawLine(QPointF(x, middle), QPointF(r.right() - 2, middle));
      if (tie.mark) {
        const double y = tie.down ? r.bottom() + 0.5 : middle;
        paintSeverity(*painter,
                      QRectF(x - kMark / 2, std::min(y - kMark / 2, r.bottom() - kMark + 0.5), kMark, kMark),
                      Severity::danger, palette);
      }
    }
    painter->restore();
  }

 private:
  SurveyTable* table_;
};

}  // namespace

SurveyDelegate::SurveyDelegate(SurveyTable* table) : QStyledItemDelegate(table), table_(table) {}

QSize SurveyDelegate::sizeHint(const QStyleOptionViewItem&, const QModelIndex& index) const {
  return {scaled(columnRow(static_cast<GridColumn>(index.column())).width), scaled(kRowHeight)};
}

void SurveyDelegate::paintFindings(QPainter& painter, const QRectF& rect, int row) const {
  const SurveyModel& survey = *table_->survey();
  const Palette& palette = table_->colors();
  double x = rect.left() + kPad;
  const double top = rect.center().y() - kMark / 2;
  const double right = rect.right() - kPad;
  QString text;
  ColorRole role = ColorRole::ink;
  if (const UnreadCell* unread = survey.unreadIn(row)) {
    paintIcon(painter, QRectF(x, top, kMark, kMark), Icon::pen, palette.color(ColorRole::mustFix));
    x += kMark + 4;
    text = survey.data(survey.index(row, static_cast<int>(GridColumn::finding))).toString();
    role = ColorRole::mustFix;
    static_cast<void>(unread);
  } else {
    const std::vector<const Finding*> all = survey.findings(row);
    if (all.empty()) return;
    // A mark for each severity that is there, worst first; the words of the first.
    std::array<bool, 4> drawn{};
    for (const Finding* finding : all) {
      bool& there = drawn[static_cast<std::size_t>(finding->severity)];
      if (there) continue;
      there = true;
      paintSeverity(painter, QRectF(x, top, kMark, kMark), finding->severity, palette);
      x += kMark + 3;
    }
    x += 2;
    text = words(all.front()->plain, *survey.style().language);
  }
  painter.setFont(stayalight::font(Face::condensed, kSurveyText));
  painter.setPen(palette.color(role));
  painter.drawText(QRectF(x, rect.top(), right - x, rect.height()), Qt::AlignLeft | Qt::AlignVCenter,
                   elided(text, right - x, Face::condensed, kSurveyText));
}

void SurveyDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                           const QModelIndex& index) const {
  const SurveyModel& survey = *table_->survey();
  const Palette& palette = table_->colors();
  const int at = index.row();
  const auto column = static_cast<GridColumn>(index.column());
  const GridRow& row = survey.row(at);
  painter->save();
  painter->setRenderHint(QPainter::Antialiasing);
  const bool lit = survey.backedUp(at);
  const bool free = !row.breaker.valid() && !row.circuit.valid();
  painter->fillRect(option.rect, palette.color(lit    ? ColorRole::lit
                                               : free ? ColorRole::window
                                                      : ColorRole::sheet));
  if (option.state.testFlag(QStyle::State_Selected) && index != table_->currentIndex()) {
    QColor wash = palette.color(ColorRole::ink);
    wash.setAlphaF(0.13F);
    painter->fillRect(option.rect, wash);
  }
  const QRectF rect = inUnits(*painter, option.rect);
  painter->setPen(QPen(palette.color(lit ? ColorRole::litEdge : ColorRole::hairline), 1));
  painter->drawLine(QPointF(rect.left(), rect.bottom() - 0.5), QPointF(rect.right(), rect.bottom() - 0.5));
  if (beginsGroup(column)) {
    painter->setPen(QPen(palette.color(ColorRole::hairline), 1));
    painter->drawLine(QPointF(rect.left() + 0.5, rect.top()), QPointF(rect.left() + 0.5, rect.bottom()));
  }

  if (column == GridColumn::finding) {
    paintFindings(*painter, rect, at);
  } else {
    const CellText cell = survey.cell(at, column);
    const UnreadCell* unread = survey.unread(at, column);
    const QString text = unread != nullptr ? unread->text : QString::fromStdString(cell.text);
    const bool name = column == GridColumn::name;
    const bool strong = name && !cell.fixed && !row.ofLoad;
    const Weight weight = strong ? Weight::medium : Weight::regular;
    ColorRole role = ColorRole::ink;
    if (column == GridColumn::goesTo) role = lit ? ColorRole::lampInk : ColorRole::ink2;
    if (cell.fixed && name) role = ColorRole::ink2;
    if (column == GridColumn::space && free) role = ColorRole::ink2;
    if (unread != nullptr) role = ColorRole::mustFix;
    QRectF inner = rect.adjusted(kPad, 0, -kPad, 0);
    if (name && row.ofLoad) inner.setLeft(inner.left() + 12);
    if (column == GridColumn::space && !row.ofLoad && survey.panel().valid()) {
      // Legs beside the number, by letter and line.
      const Panel* panel = stayalight::find(survey.plan(), row.panel);
      if (panel != nullptr) {
        double x = rect.right() - kPad;
        const std::vector<Leg> legs = poleLegs(*panel, {row.panel, row.position, row.half, row.poles});
        painter->setFont(stayalight::font(Face::condensed, 10, Weight::bold));
        for (auto leg = legs.rbegin(); leg != legs.rend(); ++leg) {
          const QString word = QString::fromStdString(std::string(legName(*leg)));
          const double wide = textWidth(word, Face::condensed, 10, Weight::bold);
          painter->setPen(palette.color(lit ? ColorRole::ink : legColor(*leg)));
          painter->drawText(QRectF(x - wide, rect.top(), wide + 1, rect.height()),
                            Qt::AlignLeft | Qt::AlignVCenter, word);
          x -= wide + 4;
        }
        inner.setRight(x - 2);
      }
    }
    const QString shown =
        elided(text, inner.width(), Face::condensed, kSurveyText, weight, name && cell.fixed);
    const double wide = textWidth(shown, Face::condensed, kSurveyText, weight, name && cell.fixed);
    const bool atRight = columnRow(column).figure;
    painter->setFont(stayalight::font(Face::condensed, kSurveyText, weight, name && cell.fixed));
    painter->setPen(palette.color(role));
    painter->drawText(inner, (atRight ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter, shown);
    const double left = atRight ? inner.right() - wide : inner.left();
    const double under = rect.center().y() + ascent(Face::condensed, kSurveyText) * 0.62;
    if (unread != nullptr) {
      // Not read: a wave under it, whatever the colours.
      QPainterPath wave(QPointF(left, under));
      const int strokes = static_cast<int>(std::ceil(std::max(wide, 12.0) / 3.0));
      for (int i = 0; i < strokes; ++i) wave.lineTo(left + 3.0 * (i + 1), under + (i % 2 == 0 ? 1.8 : 0));
      painter->setPen(QPen(palette.color(ColorRole::mustFix), 1.1));
      painter->drawPath(wave);
    } else if (cell.grade && !cell.unknown) {
      paintGradeRule(*painter, left, left + wide, under, *cell.grade, palette.color(ColorRole::ink2));
    }
  }
  if (index == table_->currentIndex()) {
    const bool focus = table_->hasFocus() || table_->viewport()->hasFocus();
    painter->setBrush(Qt::NoBrush);
    painter->setPen(QPen(palette.color(focus ? ColorRole::ink : ColorRole::edge), 2, Qt::SolidLine,
                         Qt::SquareCap, Qt::MiterJoin));
    painter->drawRect(rect.adjusted(1, 1, -1, -1));
  }
  painter->restore();
}

QWidget* SurveyDelegate::createEditor(QWidget* parent, const QStyleOptionViewItem&,
                                      const QModelIndex& index) const {
  const auto column = static_cast<GridColumn>(index.column());
  auto* line = new QLineEdit(parent);
  line->setObjectName(QStringLiteral("cellEditor"));
  line->setFrame(false);
  line->setFont(screenFont(Face::condensed, kSurveyText, Weight::medium));
  line->setAlignment((columnRow(column).figure ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
  line->setTextMargins(scaled(kPad) - 2, 0, scaled(kPad) - 2, 0);
  line->setMaxLength(static_cast<int>(kLongestText));
  line->setAccessibleName(index.data(Qt::AccessibleTextRole).toString());
  line->setAccessibleDescription(table_->survey()->columnHelp(column));
  QStringList choices;
  for (const std::string& choice : choicesOf(column, *table_->survey()->style().language))
    choices << QString::fromStdString(choice);
  if (!choices.isEmpty()) {
    auto* completer = new QCompleter(choices, line);
    completer->setCompletionMode(QCompleter::InlineCompletion);
    completer->setCaseSensitivity(Qt::CaseInsensitive);
    line->setCompleter(completer);
  }
  const Palette& palette = table_->colors();
  line->setStyleSheet(QStringLiteral("QLineEdit { border: 2px solid %1; background: %2; color: %3; }")
                          .arg(palette.color(ColorRole::ink).name(), palette.color(ColorRole::sheet).name(),
                               palette.color(ColorRole::ink).name()));
  editor_ = line;
  return line;
}

void SurveyDelegate::setEditorData(QWidget* editor, const QModelIndex& index) const {
  auto* line = static_cast<QLineEdit*>(editor);
  // What is being typed is not overwritten when the plan changes below it.
  if (!line->property("filled").toBool()) {
    line->setText(index.data(Qt::EditRole).toString());
    line->setProperty("filled", true);
  }
}

void SurveyDelegate::setModelData(QWidget* editor, QAbstractItemModel* model,
                                  const QModelIndex& index) const {
  model->setData(index, static_cast<QLineEdit*>(editor)->text(), Qt::EditRole);
}

void SurveyDelegate::updateEditorGeometry(QWidget* editor, const QStyleOptionViewItem& option,
                                          const QModelIndex&) const {
  // Wide enough to see what one types.
  constexpr int kNarrowest = 72;
  QRect rect = option.rect;
  if (rect.width() < kNarrowest) rect.setWidth(kNarrowest);
  if (rect.right() > table_->viewport()->width()) rect.moveRight(table_->viewport()->width() - 1);
  editor->setGeometry(rect);
}

bool SurveyDelegate::eventFilter(QObject* watched, QEvent* event) {
  auto* line = qobject_cast<QLineEdit*>(watched);
  if (line == nullptr || event->type() != QEvent::KeyPress)
    return QStyledItemDelegate::eventFilter(watched, event);
  const auto* key = static_cast<QKeyEvent*>(event);
  const bool back = key->modifiers().testFlag(Qt::ShiftModifier);
  const auto leave = [&](int by, bool backwards) {
    Q_EMIT commitData(line);
    Q_EMIT closeEditor(line, QAbstractItemDelegate::NoHint);
    table_->go(by, backwards);
    return true;
  };
  switch (key->key()) {
    case Qt::Key_Escape:
      Q_EMIT closeEditor(line, QAbstractItemDelegate::RevertModelCache);
      return true;
    case Qt::Key_Return:
    case Qt::Key_Enter:
      return leave(Qt::Key_Return, back);
    case Qt::Key_Tab:
      return leave(Qt::Key_Tab, back);
    case Qt::Key_Backtab:
      return leave(Qt::Key_Tab, true);
    case Qt::Key_Up:
    case Qt::Key_Down:
      return leave(key->key(), false);
    case Qt::Key_Left:
    case Qt::Key_Right:
      if (table_->typesOver_ && !back && !key->modifiers().testFlag(Qt::ControlModifier))
        return leave(key->key(), false);
      return false;
    case Qt::Key_F2:
      // From typing over to typing within: arrows then stay in the text.
      table_->typesOver_ = false;
      return true;
    default:
      return false;
  }
}

QHeaderView* makeSurveyHead(SurveyTable* table) { return new FlatHead(table); }
QHeaderView* makeSurveyGutter(SurveyTable* table) { return new Gutter(table); }

}  // namespace stayalight
