#include "ui/board/draw.h"

#include <QtCore/QBuffer>
#include <QtCore/QSaveFile>
#include <QtGui/QImage>
#include <QtGui/QPainter>
#include <QtSvg/QSvgGenerator>
#include <cmath>

#include "ui/board/paint.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kTitle{"board.drawing_title"};
constexpr MessageId kUnknownSuffix{"board.unknown_suffix"};
constexpr MessageId kNotWritten{"board.not_written"};

constexpr double kMargin = 12.0;
constexpr double kBetween = 16.0;

struct Piece {
  QPointF at;
  BoardLayout layout;
};
struct Drawing {
  std::vector<Piece> pieces;
  QSizeF size;
};

Drawing arranged(const Plan& plan, const Assessment& assessment, const Language& language,
                 const DrawingOptions& options, PanelId only = {}) {
  Drawing out;
  BoardOptions board;
  board.width = options.boardWidth;
  board.rowHeight = options.rowHeight;
  if (only.valid()) {
    out.pieces.push_back({QPointF(kMargin, kMargin), layout(plan, assessment, only, language, board)});
    out.size = out.pieces.back().layout.size + QSizeF(2.0 * kMargin, 2.0 * kMargin);
    out.size = QSizeF(std::ceil(out.size.width()), std::ceil(out.size.height()));
    return out;
  }
  const Panel* main = mainPanel(plan);
  double left = kMargin, height = 0.0;
  if (main != nullptr) {
    out.pieces.push_back({QPointF(left, kMargin), layout(plan, assessment, main->id, language, board)});
    height = out.pieces.back().layout.size.height();
    left += options.boardWidth;
  }
  double top = kMargin;
  bool others = false;
  for (const bool backups : {true, false}) {
    for (const Shared<Panel>& panel : plan.panels) {
      if ((main != nullptr && panel->id == main->id) || panel->role.is(PanelRole::backup) != backups)
        continue;
      if (!others && main != nullptr) {
        out.pieces.push_back(
            {QPointF(left, kMargin), racewayLayout(plan, language, QRectF(0.0, 0.0, options.gap, 200.0))});
        left += options.gap;
      }
      others = true;
      out.pieces.push_back({QPointF(left, top), layout(plan, assessment, panel->id, language, board)});
      top += out.pieces.back().layout.size.height() + kBetween;
      height = std::max(height, top - kBetween - kMargin);
    }
  }
  out.size = QSizeF(std::ceil(left + (others ? options.boardWidth : 0.0) + kMargin),
                    std::ceil(height + 2.0 * kMargin));
  return out;
}

void paintAll(QPainter& painter, const Drawing& drawing, const Palette& palette, const Watch& watch = {}) {
  painter.fillRect(QRectF(QPointF(0, 0), drawing.size), palette.color(ColorRole::window));
  double painted = 0.0;
  for (const Piece& piece : drawing.pieces) {
    if (!goesOn(watch, painted++ / static_cast<double>(drawing.pieces.size()))) return;
    painter.save();
    painter.translate(piece.at);
    paint(painter, piece.layout, palette);
    painter.restore();
  }
}

QImage imageOf(const Drawing& drawing, const Palette& palette, double scale, const Watch& watch = {}) {
  QImage image((drawing.size * scale).toSize(), QImage::Format_RGB32);
  image.setDevicePixelRatio(scale);
  QPainter painter(&image);
  paintAll(painter, drawing, palette, watch);
  return image;
}

QByteArray svgOf(const Drawing& drawing, const Palette& palette, const QString& title,
                 const Watch& watch = {}) {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  QSvgGenerator svg;
  svg.setOutputDevice(&buffer);
  svg.setResolution(96);
  svg.setSize(drawing.size.toSize());
  svg.setViewBox(QRectF(QPointF(0, 0), drawing.size));
  svg.setTitle(title);
  svg.setDescription(QString());
  QPainter painter(&svg);
  paintAll(painter, drawing, palette, watch);
  painter.end();
  return bytes;
}

}  // namespace

BoardPicture boardPicture(const Plan& plan, const Assessment& assessment, const Language& language,
                          const DrawingOptions& options, PanelId only, const Watch& watch) {
  const Watch first = [&](double share) { return goesOn(watch, share / 2.0); };
  const Watch second = [&](double share) { return goesOn(watch, (1.0 + share) / 2.0); };
  const Drawing drawing = arranged(plan, assessment, language, options, only);
  const Palette palette(options.theme);
  return {svgOf(drawing, palette, words(language, kTitle, plan.site->name), first),
          imageOf(drawing, palette, options.scale, second)};
}

std::optional<Message> drawBoards(const Plan& plan, const Assessment& assessment, const Language& language,
                                  const QString& path, const DrawingOptions& options) {
  const Drawing drawing = arranged(plan, assessment, language, options);
  const Palette palette(options.theme);
  QByteArray bytes;
  if (path.endsWith(QStringLiteral(".png"), Qt::CaseInsensitive)) {
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    imageOf(drawing, palette, options.scale).save(&buffer, "PNG");
  } else if (path.endsWith(QStringLiteral(".svg"), Qt::CaseInsensitive)) {
    bytes = svgOf(drawing, palette, words(language, kTitle, plan.site->name));
  } else {
    return say(kUnknownSuffix, path.toStdString());
  }
  QSaveFile file(path);
  if (!file.open(QIODevice::WriteOnly) || file.write(bytes) != bytes.size() || !file.commit()) {
    return say(kNotWritten, path.toStdString(), file.errorString().toStdString());
  }
  return std::nullopt;
}

}  // namespace stayalight
