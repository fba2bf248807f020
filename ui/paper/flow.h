#pragma once

// Fills pages from the top: head, body, title block at the foot of each. What is kept together moves to the
// next page when it does not fit.

#include <functional>

#include "ui/paper/sheets.h"

namespace stayalight {

class SheetFlow {
 public:
  /// `kind` stands engraved at the head, `name` beside it; `foot` is the line of the title block that says
  /// what the sheet rests on.
  SheetFlow(const PaperOptions& options, const Site& site, const Language& language, QString kind,
            QString name);

  [[nodiscard]] double left() const { return margin_; }
  [[nodiscard]] double right() const { return size_.width() - margin_; }
  [[nodiscard]] double width() const { return right() - left(); }
  /// Where the next thing goes.
  [[nodiscard]] double y() const { return y_; }
  void advance(double height) { y_ += height; }
  /// Lowest place of the body.
  [[nodiscard]] double bottom() const;
  [[nodiscard]] double room() const { return bottom() - y_; }
  /// A fresh page where less than `height` is left; true if it began one.
  bool need(double height);
  void newPage() { beginPage(); }
  /// How much of a page without an end something would use.
  [[nodiscard]] double heightOf(const std::function<void(SheetFlow&)>& draw) const;

  /// Draws text with its baseline at `y`; cut with an ellipsis to `width` where that is above zero.
  void text(double x, double y, const QString& text, double size, Weight weight = Weight::regular,
            Align align = Align::left, double width = 0.0, bool italic = false);
  void place(const SheetText& text) { pages_.back().texts.push_back(text); }
  void rule(QPointF from, QPointF to, double width = 0.35);
  void box(const QRectF& rect, double stroke, bool grey = false);
  void mark(SheetMark mark);
  /// Text broken into lines of `width`; returns the height used. Starts below `y`.
  double paragraph(double x, double y, double width, const QString& text, double size,
                   Weight weight = Weight::regular);
  [[nodiscard]] double paragraphHeight(double width, const QString& text, double size,
                                       Weight weight = Weight::regular) const;

  /// The pages; where there are several, each head says which of how many it is.
  [[nodiscard]] std::vector<Sheet> take();

 private:
  void beginPage();
  void writeHead(std::size_t page);
  [[nodiscard]] double blockHeight() const;  ///< of the title block

  QSizeF size_;
  double margin_ = 36.0;
  double y_ = 0.0;
  QString kind_, name_;
  const Site& site_;
  const Language& language_;
  PaperOptions options_;
  QString job_;
  std::vector<Sheet> pages_;
};

/// Lines a text breaks into at a width; a line feed begins another.
[[nodiscard]] QStringList brokenLines(const QString& text, double width, double size, Weight weight);
/// Writes "n of m" into the title blocks of a finished set.
void numberPages(std::vector<Sheet>& sheets, const Language& language);

}  // namespace stayalight
