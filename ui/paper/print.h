#pragma once

// From sheets to a PDF, or to pictures of the pages. No widgets.

#include <QtCore/QString>
#include <QtGui/QImage>
#include <functional>

#include "core/message/result.h"
#include "ui/paper/sheets.h"

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

/// One page at `scale` pixels a point.
[[nodiscard]] QImage pageImage(const Sheet& sheet, double scale);

}  // namespace stayalight
