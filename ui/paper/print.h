#pragma once

// From sheets to a PDF, or to pictures of the pages. No widgets.

#include <QtCore/QString>
#include <QtGui/QImage>
#include <functional>

#include "core/message/result.h"
#include "ui/paper/sheets.h"

class QPagedPaintDevice;

namespace stayalight {

/// Told before each page how many are drawn; false stops the work.
using PageProgress = std::function<bool(int drawn)>;
/// Writes the sheets as a PDF: vectors, searchable text, an outline, a language, and no date of its own
/// making, so that the same plan gives the same bytes. The file is written whole or not at all; stopped, what
/// was there is as before. Refused with the file and the reason. Any thread.
[[nodiscard]] Result<int> writePdf(const std::vector<Sheet>& sheets, const QString& path,
                                   const QString& title, const PageProgress& progress = {});
/// The same as bytes, empty where nothing could be drawn or it was stopped.
[[nodiscard]] QByteArray pdfBytes(const std::vector<Sheet>& sheets, const QString& title,
                                  const PageProgress& progress = {});

/// Draws the sheets on a printer and returns how many; fewer where it was stopped: what is drawn is with the
/// printer by then, which has no way back. Refused where the printer takes nothing. Any thread, as long as no
/// other uses the printer meanwhile.
[[nodiscard]] Result<int> drawOn(QPagedPaintDevice& printer, const std::vector<Sheet>& sheets,
                                 const PageProgress& progress = {});

/// One page at `scale` pixels a point.
[[nodiscard]] QImage pageImage(const Sheet& sheet, double scale);

}  // namespace stayalight
