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
                 const DrawingOptions& options) {
  Drawing out;
  BoardOptions board;
  board.width = options.boardWidth;
  board.rowHeight = options.rowHeight;
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

void paintAll(QPainter& painter, const Drawing& drawing, const Palette& palette) {
  painter.fillRect(QRectF(QPointF(0, 0), drawing.size), palette.color(ColorRole::window));
  for (const Piece& piece : drawing.pieces) {
    painter.save();
    painter.translate(piece.at);
    paint(painter, piece.layout, palette);
    painter.restore();
  }
}

}  // namespace

std::optional<Message> drawBoards(const Plan& plan, const Assessment& assessment, const Language& language,
                                  const QString& path, const DrawingOptions& options) {
  const Drawing drawing = arranged(plan, assessment, language, options);
  const Palette palette(options.theme);
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  if (path.endsWith(QStringLiteral(".png"), Qt::CaseInsensitive)) {
    QImage image((drawing.size * options.scale).toSize(), QImage::Format_RGB32);
    image.setDevicePixelRatio(options.scale);
    QPainter painter(&image);
    paintAll(painter, drawing, palette);
    painter.end();
    image.save(&buffer, "PNG");
  } else if (path.endsWith(QStringLiteral(".svg"), Qt::CaseInsensitive)) {
    QSvgGenerator svg;
    svg.setOutputDevice(&buffer);
    svg.setResolution(96);
    svg.setSize(drawing.size.toSize());
    svg.setViewBox(QRectF(QPointF(0, 0), drawing.size));
    svg.setTitle(words(language, kTitle, plan.site->name));
    svg.setDescription(QString());
    QPainter painter(&svg);
    paintAll(painter, drawing, palette);
    painter.end();
  } else {
    return say(kUnknownSuffix, path.toStdString());
  }
  buffer.close();
  QSaveFile file(path);
  if (!file.open(QIODevice::WriteOnly) || file.write(bytes) != bytes.size() || !file.commit()) {
    return say(kNotWritten, path.toStdString(), file.errorString().toStdString());
  }
  return std::nullopt;
}

}  // namespace stayalight
