#pragma once

// The pages of a plan, and what is wrong with them.

#include <QtCore/QFile>
#include <QtCore/QStringList>

#include "core/assess/assess.h"
#include "core/file/file.h"
#include "ui/paper/sheets.h"
#include "ui/wording/language.h"

namespace stayalight {

inline Plan samplePlan(const char* name) {
  QFile file(QStringLiteral(STAYALIGHT_SOURCE_DIR "/samples/") + QString::fromLatin1(name));
  if (!file.open(QIODevice::ReadOnly)) return {};
  const QByteArray bytes = file.readAll();
  const auto read =
      readPlan(std::string_view(bytes.constData(), static_cast<std::size_t>(bytes.size())), name);
  return read ? read.value().plan : Plan{};
}

inline std::vector<Sheet> allSheets(const Plan& plan, const Language& language,
                                    PaperSize size = PaperSize::letter) {
  PaperOptions options;
  options.size = size;
  options.planName = QStringLiteral("test");
  options.version = QStringLiteral("1");
  return sheets(plan, assess(plan), sheetChoices(plan, language), language, options);
}

/// Texts that stand off the page or over one another, one a line.
inline QString faults(const std::vector<Sheet>& pages) {
  QStringList found;
  for (std::size_t p = 0; p < pages.size(); ++p) {
    const Sheet& page = pages[p];
    const QRectF paper(QPointF(18, 18), page.size - QSizeF(36, 36));
    for (std::size_t i = 0; i < page.texts.size(); ++i) {
      const QRectF mine = page.texts[i].extent();
      if (!paper.contains(mine))
        found << QStringLiteral("page %1: off the page: %2").arg(p + 1).arg(page.texts[i].text);
      for (std::size_t k = i + 1; k < page.texts.size(); ++k) {
        const QRectF cut = mine & page.texts[k].extent();
        if (cut.width() > 0.6 && cut.height() > 1.2) {
          found << QStringLiteral("page %1: \"%2\" over \"%3\"")
                       .arg(p + 1)
                       .arg(page.texts[i].text, page.texts[k].text);
        }
      }
    }
  }
  return found.join(u'\n');
}

}  // namespace stayalight
