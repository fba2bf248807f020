#include "ui/style/program_style.h"

#include <QtCore/QEvent>
#include <QtGui/QPainter>
#include <QtGui/QPolygonF>
#include <QtWidgets/QAbstractButton>
#include <QtWidgets/QAbstractScrollArea>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QStyleOption>
#include <algorithm>

namespace stayalight {

namespace {
constexpr double kRadius = 3.0;
constexpr int kFieldMargin = 3;  // between a field's edge and what is typed
}  // namespace

ProgramStyle::ProgramStyle(const Palette& palette)
    : QProxyStyle(QStringLiteral("Fusion")), palette_(palette) {}

void ProgramStyle::frame(QPainter* painter, const QStyleOption& option, ColorRole ground, bool fill) const {
  const bool focus = option.state.testFlag(State_HasFocus);
  const double width = focus ? 2.0 : 1.0;
  painter->save();
  painter->setRenderHint(QPainter::Antialiasing);
  painter->setPen(QPen(palette_.color(focus ? ColorRole::lamp : ColorRole::edge), width));
  painter->setBrush(fill ? QBrush(palette_.color(ground)) : QBrush(Qt::NoBrush));
  const double inset = width / 2.0;
  painter->drawRoundedRect(QRectF(option.rect).adjusted(inset, inset, -inset, -inset), kRadius, kRadius);
  painter->restore();
}

void ProgramStyle::drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                                 const QWidget* widget) const {
  switch (element) {
    case PE_FrameLineEdit:
      return frame(painter, *option, ColorRole::sheet, false);
    case PE_Frame:
      if (qobject_cast<const QAbstractScrollArea*>(widget) != nullptr)
        return frame(painter, *option, ColorRole::sheet, false);
      break;
    case PE_PanelButtonCommand: {
      const auto* button = qstyleoption_cast<const QStyleOptionButton*>(option);
      const bool down = option->state.testFlag(State_Sunken) || option->state.testFlag(State_On);
      if (button != nullptr && button->features.testFlag(QStyleOptionButton::Flat) && !down &&
          !option->state.testFlag(State_HasFocus))
        return;
      const bool over = option->state.testFlag(State_MouseOver) && option->state.testFlag(State_Enabled);
      return frame(painter, *option,
                   down   ? ColorRole::track
                   : over ? ColorRole::window
                          : ColorRole::sheet,
                   true);
    }
    case PE_FrameFocusRect:
      if (qobject_cast<const QPushButton*>(widget) != nullptr) return;  // its frame shows it
      if (qobject_cast<const QAbstractButton*>(widget) != nullptr)
        return frame(painter, *option, ColorRole::sheet, false);
      break;
    case PE_IndicatorCheckBox: {
      QProxyStyle::drawPrimitive(element, option, painter, widget);
      QStyleOption edge(*option);
      edge.state.setFlag(State_HasFocus, false);
      edge.rect = option->rect.adjusted(0, 0, -1, -1);
      return frame(painter, edge, ColorRole::sheet, false);
    }
    default:
      break;
  }
  QProxyStyle::drawPrimitive(element, option, painter, widget);
}

void ProgramStyle::drawControl(ControlElement element, const QStyleOption* option, QPainter* painter,
                               const QWidget* widget) const {
  const QRect& rect = option->rect;
  switch (element) {
    case CE_PushButtonBevel:
      QProxyStyle::drawControl(element, option, painter, widget);
      // A flat one has no frame to show it by.
      if (const auto* button = qobject_cast<const QPushButton*>(widget);
          button != nullptr && button->isFlat() && option->state.testFlag(State_HasFocus))
        frame(painter, *option, ColorRole::sheet, false);
      return;
    case CE_MenuBarEmptyArea:
      painter->fillRect(rect, option->palette.window());
      return;
    case CE_MenuBarItem:
      QProxyStyle::drawControl(element, option, painter, widget);
      if (!option->state.testFlag(State_Selected))
        // Fusion's line under it; on a finer screen that begins above the last row.
        painter->fillRect(QRect(rect.left(), rect.bottom() - 1, rect.width(), 2), option->palette.window());
      return;
    case CE_ProgressBarGroove:
      return frame(painter, *option, ColorRole::sheet, true);
    case CE_ProgressBarContents:
      if (const auto* bar = qstyleoption_cast<const QStyleOptionProgressBar*>(option);
          bar != nullptr && bar->maximum > bar->minimum)
        return drawProgress(painter, *bar);
      break;
    case CE_HeaderSection:
    case CE_HeaderEmptyArea:
      painter->fillRect(rect, palette_.color(ColorRole::window));
      painter->fillRect(QRect(rect.left(), rect.bottom(), rect.width(), 1), palette_.color(ColorRole::edge));
      if (element == CE_HeaderSection)
        painter->fillRect(QRect(rect.right(), rect.top(), 1, rect.height()),
                          palette_.color(ColorRole::hairline));
      return;
    case CE_Splitter: {
      // A row of points along the seam.
      constexpr int kPoint = 2, kStep = 5, kPoints = 5;
      const bool lying = rect.width() > rect.height();
      for (int i = 0; i < kPoints; ++i) {
        const int along = (i - kPoints / 2) * kStep;
        const QPoint at = rect.center() + (lying ? QPoint(along, 0) : QPoint(0, along));
        painter->fillRect(QRect(at, QSize(kPoint, kPoint)), palette_.color(ColorRole::edge));
      }
      return;
    }
    case CE_ToolBar:
      painter->fillRect(rect, option->palette.window());
      painter->fillRect(QRect(rect.left(), rect.top(), rect.width(), 1), palette_.color(ColorRole::hairline));
      return;
    default:
      break;
  }
  QProxyStyle::drawControl(element, option, painter, widget);
}

void ProgramStyle::drawComplexControl(ComplexControl control, const QStyleOptionComplex* option,
                                      QPainter* painter, const QWidget* widget) const {
  if (const auto* bar = qstyleoption_cast<const QStyleOptionSlider*>(option);
      control == CC_ScrollBar && bar != nullptr)
    return drawScrollBar(painter, *bar, widget);
  QProxyStyle::drawComplexControl(control, option, painter, widget);
  if (control == CC_SpinBox) frame(painter, *option, ColorRole::sheet, false);
}

void ProgramStyle::drawScrollBar(QPainter* painter, const QStyleOptionSlider& bar,
                                 const QWidget* widget) const {
  const bool upright = bar.orientation == Qt::Vertical;
  painter->save();
  painter->setRenderHint(QPainter::Antialiasing);
  painter->fillRect(bar.rect, palette_.color(ColorRole::window));
  const auto part = [&](SubControl which) {
    return QRectF(proxy()->subControlRect(CC_ScrollBar, &bar, which, widget));
  };
  const bool ends = bar.maximum <= bar.minimum;
  painter->setPen(Qt::NoPen);
  if (!ends) {
    const bool held =
        bar.activeSubControls.testFlag(SC_ScrollBarSlider) && bar.state & (State_Sunken | State_MouseOver);
    constexpr double kBeside = 3.0;
    const QRectF slider = part(SC_ScrollBarSlider);
    const QRectF handle =
        upright ? slider.adjusted(kBeside, 1, -kBeside, -1) : slider.adjusted(1, kBeside, -1, -kBeside);
    painter->setBrush(palette_.color(held ? ColorRole::ink : ColorRole::edge));
    painter->drawRoundedRect(handle, kRadius, kRadius);
  }
  painter->setBrush(palette_.color(ends ? ColorRole::hairline : ColorRole::ink2));
  for (const SubControl which : {SC_ScrollBarSubLine, SC_ScrollBarAddLine}) {
    const QPointF middle = part(which).center();
    constexpr double kHalf = 3.5;
    const double to = which == SC_ScrollBarAddLine ? kHalf / 2.0 : -kHalf / 2.0;
    const QPointF tip = upright ? QPointF(0, to) : QPointF(to, 0);
    const QPointF side = upright ? QPointF(kHalf, 0) : QPointF(0, kHalf);
    painter->drawPolygon(QPolygonF{middle + tip, middle - tip + side, middle - tip - side});
  }
  painter->restore();
}

void ProgramStyle::drawProgress(QPainter* painter, const QStyleOptionProgressBar& progress) const {
  const double share = static_cast<double>(progress.progress - progress.minimum) /
                       static_cast<double>(progress.maximum - progress.minimum);
  QRectF done = QRectF(progress.rect).adjusted(2.0, 2.0, -2.0, -2.0);
  done.setWidth(done.width() * std::clamp(share, 0.0, 1.0));
  if (progress.direction == Qt::RightToLeft) done.moveRight(progress.rect.right() - 1.0);
  painter->fillRect(done, palette_.color(ColorRole::ink2));
}

void ProgramStyle::polish(QWidget* widget) {
  QProxyStyle::polish(widget);
  if (qobject_cast<QComboBox*>(widget) == nullptr) return;
  if (widget->focusPolicy() == Qt::WheelFocus) widget->setFocusPolicy(Qt::StrongFocus);
  widget->installEventFilter(this);
}

bool ProgramStyle::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() != QEvent::Wheel) return QProxyStyle::eventFilter(watched, event);
  event->ignore();
  return true;
}

int ProgramStyle::styleHint(StyleHint hint, const QStyleOption* option, const QWidget* widget,
                            QStyleHintReturn* back) const {
  // The desktop's icons are of another family than the program's.
  if (hint == SH_DialogButtonBox_ButtonsHaveIcons) return 0;
  return QProxyStyle::styleHint(hint, option, widget, back);
}

QSize ProgramStyle::sizeFromContents(ContentsType type, const QStyleOption* option, const QSize& contents,
                                     const QWidget* widget) const {
  const QSize size = QProxyStyle::sizeFromContents(type, option, contents, widget);
  switch (type) {
    case CT_MenuItem:
      if (const auto* item = qstyleoption_cast<const QStyleOptionMenuItem*>(option);
          item != nullptr && item->menuItemType == QStyleOptionMenuItem::Separator)
        return size;
      [[fallthrough]];
    case CT_PushButton:
    case CT_ToolButton:
    case CT_CheckBox:
    case CT_RadioButton:
    case CT_ComboBox:
    case CT_LineEdit:
    case CT_SpinBox:
    case CT_MenuBarItem:
    case CT_ItemViewItem:
    case CT_HeaderSection:
      return size.expandedTo(QSize(kLeastTarget, kLeastTarget));
    default:
      return size;
  }
}

QRect ProgramStyle::subElementRect(SubElement element, const QStyleOption* option,
                                   const QWidget* widget) const {
  const QRect rect = QProxyStyle::subElementRect(element, option, widget);
  switch (element) {
    case SE_LineEditContents:
      return rect.adjusted(kFieldMargin, 0, -kFieldMargin, 0);
    case SE_CheckBoxClickRect:
    case SE_RadioButtonClickRect:
      // Above and below its words too.
      return QRect(rect.left(), option->rect.top(), std::max(rect.width(), kLeastTarget),
                   option->rect.height());
    default:
      return rect;
  }
}

}  // namespace stayalight
