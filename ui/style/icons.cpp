#include "ui/style/icons.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QHash>
#include <QtGui/QIconEngine>
#include <QtGui/QPainter>
#include <array>
#include <cctype>
#include <cmath>
#include <numbers>
#include <string_view>

namespace stayalight {
namespace {

// The strokes of each icon in the path notation of SVG: M m L l H h V v C c Q q T t A a Z z.
constexpr std::array<std::string_view, kIconCount> kStrokes = {
    /* water */
    "M8 1.8 C8 1.8 3.3 7 3.3 10 a4.7 4.7 0 0 0 9.4 0 C12.7 7 8 1.8 8 1.8Z M6 10.6 a2 2 0 0 0 1.8 1.9",
    /* heat */
    "M2.5 13.5 h11 M4 13.5 V5 M8 13.5 V5 M12 13.5 V5 M3 5 h10 M5 2.2 q-1 .8 0 1.6 M8.2 2.2 q-1 .8 0 1.6 "
    "M11.4 2.2 q-1 .8 0 1.6",
    /* coldFood */ "M4 1.5 h8 v13 h-8Z M4 6.2 h8 M6 3.2 v1.4 M6 8 v2.4",
    /* internet */
    "M3 10.5 h10 v3.3 h-10Z M5.2 12.2 h.1 M8 10.5 V7 M5.4 5.6 a3.7 3.7 0 0 1 5.2 0 M3.2 3.4 a6.8 6.8 0 0 1 "
    "9.6 0",
    /* light */
    "M5.9 10.4 C3.9 9 3.6 6.8 3.9 5.6 a4.2 4.2 0 0 1 8.2 0 C12.4 6.8 12.1 9 10.1 10.4 V11.6 h-4.2Z M6.2 13.8 "
    "h3.6",
    /* sewage */
    "M2 4 h6 a3.5 3.5 0 0 1 3.5 3.5 V10 M2 7.6 h5 a1 1 0 0 1 1 1 V10 M6.9 10 h5.7 M9.8 11.8 v2.4 M8.6 13.1 "
    "l1.2 1.2 1.2 -1.2",
    /* dryBasement */
    "M2 6.5 L8 2 L14 6.5 M3.6 5.6 V10 M12.4 5.6 V10 M1.8 12 q1.5 -1.4 3.1 0 t3.1 0 t3.1 0 t3.1 0 M3.8 14.4 "
    "q1.2 -1 2.4 0 t2.4 0 t2.4 0",
    /* panel */
    "M3.5 1.5 h9 v13 h-9Z M8 4 v8 M5.2 5 h1.6 M5.2 8 h1.6 M5.2 11 h1.6 M9.2 5 h1.6 M9.2 8 h1.6 M9.2 11 h1.6",
    /* battery */ "M2 4.5 h11 v7 h-11Z M14.4 6.8 v2.4 M4.6 6.8 v2.4 M7.4 6.8 v2.4",
    /* sun */
    "M8 5 a3 3 0 1 0 .01 0 M8 1.2 v1.6 M8 13.2 v1.6 M1.2 8 h1.6 M13.2 8 h1.6 M3.2 3.2 l1.1 1.1 M11.7 11.7 "
    "l1.1 1.1 M12.8 3.2 l-1.1 1.1 M4.3 11.7 l-1.1 1.1",
    /* clock */ "M8 1.8 a6.2 6.2 0 1 0 .01 0 M8 4.5 V8.2 L10.4 9.8",
    /* meter */ "M2.5 3 h11 v10 h-11Z M4.8 8.8 a3.4 3.4 0 0 1 6.4 0 M8 9 L10 6.4",
    /* power */ "M9 1.5 L4 9 h3.6 L7 14.5 L12 7 H8.4Z",
    /* table */ "M1.5 6 h13 M3 6 v7.5 M13 6 v7.5 M5 6 V3.5 h6 V6",
    /* list */ "M5.5 4 h8 M5.5 8 h8 M5.5 12 h8 M2.6 4 h.1 M2.6 8 h.1 M2.6 12 h.1",
    /* sheet */ "M3.5 1.8 h6 l3 3 v9.4 h-9Z M9.5 1.8 v3 h3 M5.6 8 h4.8 M5.6 10.8 h4.8",
    /* folder */ "M2 4 h4.5 l1.5 1.8 h6 v7.7 h-12Z",
    /* find */ "M7 2.5 a4.5 4.5 0 1 0 .01 0 M10.3 10.3 L14 14",
    /* pen */ "M3 13 l.8 -3 6.8 -6.8 2.2 2.2 -6.8 6.8Z",
    /* undo */ "M3 6.5 h6.5 a3.6 3.6 0 0 1 0 7.2 H6 M5.6 3.6 L2.8 6.5 L5.6 9.4",
    /* redo */ "M13 6.5 H6.5 a3.6 3.6 0 0 0 0 7.2 H10 M10.4 3.6 L13.2 6.5 L10.4 9.4",
    /* add */ "M8 3 V13 M3 8 H13",
    /* remove */ "M3 8 H13",
    /* move */ "M2 8 H13.5 M9.5 4 L13.5 8 L9.5 12",
    /* sendBack */ "M14 8 H2.5 M6.5 4 L2.5 8 L6.5 12",
    /* pin */ "M5 2 h6 M6 2 V7 L4 9.5 h8 L10 7 V2 M8 9.5 V14",
    /* working */ "M12.5 3 H4 L8.5 8 L4 13 H12.5",
    /* close */ "M4 4 L12 12 M12 4 L4 12",
    /* next */ "M6 3.5 L10.5 8 L6 12.5",
    /* previous */ "M10 3.5 L5.5 8 L10 12.5",
    /* check */ "M3 8.5 L6.5 12 L13 4.5",
    /* settings */
    "M2 4.5 H9 M12 4.5 H14 M10.5 3 a1.5 1.5 0 1 0 .01 0 M2 11.5 H4 M7 11.5 H14 M5.5 10 a1.5 1.5 0 1 0 .01 0",
};

/// Reads path notation; the strokes above are all it ever sees.
class PathReader {
 public:
  explicit PathReader(std::string_view text) : text_(text) {}

  QPainterPath read() {
    char command = 0;
    while (skip(), at_ < text_.size()) {
      if (std::isalpha(static_cast<unsigned char>(text_[at_]))) command = text_[at_++];
      step(command);
      // Numbers that follow a move without a new letter draw lines.
      if (command == 'M') command = 'L';
      if (command == 'm') command = 'l';
    }
    return path_;
  }

 private:
  void skip() {
    while (at_ < text_.size() && (text_[at_] == ' ' || text_[at_] == ',')) ++at_;
  }
  double number() {
    skip();
    double sign = 1.0, value = 0.0, place = 0.0;
    if (at_ < text_.size() && text_[at_] == '-') {
      sign = -1.0;
      ++at_;
    }
    for (; at_ < text_.size(); ++at_) {
      const char c = text_[at_];
      if (c == '.' && place == 0.0) {
        place = 1.0;
      } else if (c >= '0' && c <= '9') {
        value = value * 10.0 + (c - '0');
        if (place > 0.0) place *= 10.0;
      } else {
        break;
      }
    }
    return sign * (place > 0.0 ? value / place : value);
  }
  QPointF point(bool relative) {
    const double x = number();
    const double y = number();
    return relative ? here_ + QPointF(x, y) : QPointF(x, y);
  }
  void lineTo(QPointF to) {
    path_.lineTo(to);
    here_ = to;
  }
  void step(char command) {
    const bool relative = command >= 'a';
    QPointF turn = here_;
    switch (std::tolower(command)) {
      case 'm':
        here_ = point(relative);
        path_.moveTo(here_);
        start_ = here_;
        break;
      case 'l':
        lineTo(point(relative));
        break;
      case 'h': {
        const double x = number();
        lineTo({relative ? here_.x() + x : x, here_.y()});
        break;
      }
      case 'v': {
        const double y = number();
        lineTo({here_.x(), relative ? here_.y() + y : y});
        break;
      }
      case 'c': {
        const QPointF a = point(relative), b = point(relative), to = point(relative);
        path_.cubicTo(a, b, to);
        here_ = to;
        break;
      }
      case 'q': {
        turn = point(relative);
        const QPointF to = point(relative);
        path_.quadTo(turn, to);
        here_ = to;
        break;
      }
      case 't': {
        turn = 2.0 * here_ - turn_;
        const QPointF to = point(relative);
        path_.quadTo(turn, to);
        here_ = to;
        break;
      }
      case 'a': {
        const double radius = number();
        number();  // circles only: the second radius is the first
        number();
        const bool large = number() > 0.5, clockwise = number() > 0.5;
        arc(radius, large, clockwise, point(relative));
        break;
      }
      case 'z':
        path_.closeSubpath();
        here_ = start_;
        break;
      default:
        at_ = text_.size();
        break;
    }
    turn_ = std::tolower(command) == 'q' || std::tolower(command) == 't' ? turn : here_;
  }
  void arc(double radius, bool large, bool clockwise, QPointF to) {
    const QPointF half = (to - here_) / 2.0;
    const double chord = std::hypot(half.x(), half.y());
    radius = std::max(radius, chord);
    const double rise = std::sqrt(std::max(0.0, radius * radius - chord * chord));
    const double side = large == clockwise ? -1.0 : 1.0;
    const QPointF normal = chord > 0.0 ? QPointF(-half.y(), half.x()) / chord : QPointF(0, 1);
    const QPointF centre = (here_ + to) / 2.0 + normal * (rise * side);
    const auto angle = [&](QPointF p) {
      return std::atan2(centre.y() - p.y(), p.x() - centre.x()) * 180.0 / std::numbers::pi;
    };
    const double from = angle(here_);
    double sweep = angle(to) - from;
    if (clockwise && sweep > 0.0) sweep -= 360.0;
    if (!clockwise && sweep < 0.0) sweep += 360.0;
    path_.arcTo(QRectF(centre.x() - radius, centre.y() - radius, 2 * radius, 2 * radius), from, sweep);
    here_ = to;
  }

  std::string_view text_;
  std::size_t at_ = 0;
  QPainterPath path_;
  QPointF here_, start_, turn_;
};

class LineIconEngine : public QIconEngine {
 public:
  LineIconEngine(Icon icon, const Palette& palette) : icon_(icon), palette_(palette) {}
  void paint(QPainter* painter, const QRect& rect, QIcon::Mode mode, QIcon::State) override {
    const double side = std::min(rect.width(), rect.height());
    const QRectF square(rect.x() + (rect.width() - side) / 2.0, rect.y() + (rect.height() - side) / 2.0, side,
                        side);
    paintIcon(*painter, square, icon_,
              palette_.color(mode == QIcon::Disabled ? ColorRole::ink3 : ColorRole::ink));
  }
  QPixmap pixmap(const QSize& size, QIcon::Mode mode, QIcon::State state) override {
    QPixmap out(size);
    out.fill(Qt::transparent);
    QPainter painter(&out);
    paint(&painter, QRect(QPoint(0, 0), size), mode, state);
    return out;
  }
  QIconEngine* clone() const override { return new LineIconEngine(*this); }

 private:
  Icon icon_;
  Palette palette_;
};

}  // namespace

const QPainterPath& iconPath(Icon icon) {
  static const std::array<QPainterPath, kIconCount> paths = [] {
    std::array<QPainterPath, kIconCount> out;
    for (std::size_t i = 0; i < out.size(); ++i) out[i] = PathReader(kStrokes[i]).read();
    return out;
  }();
  return paths[static_cast<std::size_t>(icon)];
}

void paintIcon(QPainter& painter, const QRectF& rect, Icon icon, const QColor& color) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.translate(rect.topLeft());
  painter.scale(rect.width() / 16.0, rect.height() / 16.0);
  // The stroke keeps its weight in small icons: 1.5 units, and no thinner than 1.2 px.
  const double width = std::max(1.4, 1.2 * 16.0 / std::max(1.0, rect.width()));
  painter.setPen(QPen(color, width, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  painter.setBrush(Qt::NoBrush);
  painter.drawPath(iconPath(icon));
  painter.restore();
}

QIcon buttonIcon(Icon icon, const Palette& palette) { return QIcon(new LineIconEngine(icon, palette)); }

QIcon programIcon() { return QIcon(QStringLiteral(":/icons/stayalight.svg")); }

}  // namespace stayalight
