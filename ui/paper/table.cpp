#include "ui/paper/table.h"

#include <algorithm>

namespace stayalight {
namespace {

constexpr double kHead = 16.0;
constexpr double kText = 8.2;
constexpr double kLine = 10.0;
constexpr double kPad = 4.0;

}  // namespace

double SheetTable::left(std::size_t column) const {
  double x = flow_.left();
  for (std::size_t i = 0; i < column; ++i) x += width(i);
  return x;
}

void SheetTable::head() {
  flow_.need(kHead + std::max(kLine + 2.0 * kPad, style_.leastRow));
  const double top = flow_.y();
  flow_.box(QRectF(flow_.left(), top, flow_.width(), kHead), 0.0, true);
  flow_.rule({flow_.left(), top}, {flow_.right(), top}, 0.9);
  for (std::size_t i = 0; i < columns_.size(); ++i) {
    const TableColumn& column = columns_[i];
    const double x = column.align == Align::right    ? left(i) + width(i) - kPad
                     : column.align == Align::centre ? left(i) + width(i) / 2.0
                                                     : left(i) + kPad;
    flow_.text(x, top + 11.0, column.title, 7.6, Weight::bold, column.align, width(i) - kPad);
  }
  flow_.advance(kHead);
  drawGrid(top, flow_.y());
  flow_.rule({flow_.left(), flow_.y()}, {flow_.right(), flow_.y()}, 0.9);
}

void SheetTable::row(const QStringList& cells, bool strong) {
  std::vector<QStringList> lines(columns_.size());
  qsizetype most = 1;
  for (std::size_t i = 0; i < columns_.size(); ++i) {
    const auto at = static_cast<qsizetype>(i);
    if (at >= cells.size() || cells[at].isEmpty()) continue;
    const Weight weight = strong || columns_[i].strong ? Weight::bold : Weight::regular;
    lines[i] = brokenLines(cells[at], width(i) - 2.0 * kPad, kText, weight);
    most = std::max(most, lines[i].size());
  }
  const double height = std::max(static_cast<double>(most) * kLine + kPad, style_.leastRow);
  if (flow_.need(height)) head();
  for (std::size_t i = 0; i < columns_.size(); ++i) {
    const TableColumn& column = columns_[i];
    const Weight weight = strong || column.strong ? Weight::bold : Weight::regular;
    double baseline = flow_.y() + kLine;
    if (style_.leastRow > 0.0) {
      const auto here = static_cast<double>(lines[i].size());
      baseline = flow_.y() + (height - here * kLine) / 2.0 + kLine - 2.0;
    }
    for (const QString& line : lines[i]) {
      const double x = column.align == Align::right    ? left(i) + width(i) - kPad
                       : column.align == Align::centre ? left(i) + width(i) / 2.0
                                                       : left(i) + kPad;
      flow_.text(x, baseline, line, kText, weight, column.align, width(i) - kPad);
      baseline += kLine;
    }
    if (lines[i].empty() && !column.ticks.isEmpty()) drawTicks(column.ticks, i, height);
    if (column.blank) {
      const double size = 8.0;
      flow_.mark({SheetMarkKind::tick,
                  QRectF(left(i) + (width(i) - size) / 2.0, flow_.y() + (height - size) / 2.0, size, size)});
    }
  }
  flow_.advance(height);
  drawGrid(flow_.y() - height, flow_.y());
  flow_.rule({flow_.left(), flow_.y()}, {flow_.right(), flow_.y()});
}

void SheetTable::drawTicks(const QStringList& ticks, std::size_t column, double height) {
  constexpr double kBox = 7.0;
  const double step = (width(column) - 2.0) / static_cast<double>(ticks.size());
  const double middle = flow_.y() + height / 2.0;
  double x = left(column) + 3.0;
  for (const QString& word : ticks) {
    flow_.mark({SheetMarkKind::tick, QRectF(x, middle - kBox / 2.0, kBox, kBox)});
    flow_.text(x + kBox + 2.0, middle + 2.6, word, 7.2, Weight::regular, Align::left, step - kBox - 3.0);
    x += step;
  }
}

void SheetTable::drawGrid(double top, double bottom) {
  if (!style_.grid) return;
  for (std::size_t i = 0; i <= columns_.size(); ++i) flow_.rule({left(i), top}, {left(i), bottom});
}

void SheetTable::end() {
  flow_.rule({flow_.left(), flow_.y()}, {flow_.right(), flow_.y()}, 0.9);
  flow_.advance(8.0);
}

void drawHeading(SheetFlow& flow, const QString& heading, double keepWith) {
  flow.need(keepWith);
  flow.advance(4.0);
  flow.text(flow.left(), flow.y() + 9.0, heading, 9.5, Weight::bold, Align::left, flow.width());
  flow.advance(14.0);
}

void drawNumbered(SheetFlow& flow, const QStringList& notes) {
  std::int64_t count = 0;
  for (const QString& note : notes) {
    const double width = flow.width() - 16.0;
    flow.need(flow.paragraphHeight(width, note, 8.0) + 2.0);
    flow.text(flow.left(), flow.y() + 8.0, QString::number(++count), 8.0, Weight::bold);
    flow.advance(flow.paragraph(flow.left() + 14.0, flow.y(), width, note, 8.0) + 2.0);
  }
}

}  // namespace stayalight
