#pragma once

// The boards as a picture file, without a window: for the headless command and for documents.

#include <QtCore/QByteArray>
#include <QtCore/QString>
#include <QtGui/QImage>
#include <optional>

#include "core/message/watch.h"
#include "ui/board/layout.h"

namespace stayalight {

struct DrawingOptions {
  Theme theme = Theme::light;
  double scale = 2.0;  ///< pixels a layout unit, for PNG
  double rowHeight = kRowHeight;
  double boardWidth = 487.0;
  double gap = 54.0;  ///< between the boards; the raceway is drawn there
};

/// A picture for the clipboard or a file.
struct BoardPicture {
  QByteArray svg;
  QImage image;  ///< at the scale of the options
};
/// All boards, or the one of a panel alone. May be called on any thread; stopped by `watch` the picture is of
/// no use.
[[nodiscard]] BoardPicture boardPicture(const Plan& plan, const Assessment& assessment,
                                        const Language& language, const DrawingOptions& options = {},
                                        PanelId only = {}, const Watch& watch = {});

/// Draws every panel of the plan, the main panel left, the others to its right, to a .png or .svg. Needs a
/// QGuiApplication and the faces loaded. A message where it failed: another suffix, a place that cannot be
/// written.
[[nodiscard]] std::optional<Message> drawBoards(const Plan& plan, const Assessment& assessment,
                                                const Language& language, const QString& path,
                                                const DrawingOptions& options = {});

}  // namespace stayalight
