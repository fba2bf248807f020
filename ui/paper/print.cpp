#include "ui/paper/print.h"

#include <QtCore/QBuffer>
#include <QtCore/QSaveFile>
#include <QtGui/QPageLayout>
#include <QtGui/QPagedPaintDevice>
#include <QtGui/QPainter>
#include <QtGui/QPdfWriter>
#include <optional>
#ifdef __clang_analyzer__
// For clang-tidy alone: in C++20 clang 14 refuses a vector in this header whose type is not complete yet.
#define JSON_HH
class JSON;
#endif
#include <qpdf/QPDF.hh>
#include <qpdf/QPDFObjectHandle.hh>
#include <qpdf/QPDFWriter.hh>

namespace stayalight {
namespace {

constexpr MessageId kCannotWrite{"paper.cannot_write"};
constexpr MessageId kNothingDrawn{"paper.nothing_drawn"};
constexpr MessageId kStopped{"paper.stopped"};
constexpr MessageId kNotPrinted{"paper.not_printed"};
constexpr int kDotsPerInch = 1200;

QPageSize qtPageSize(const Sheet& sheet) {
  return QPageSize(sheet.size.toSize(), QString(), QPageSize::ExactMatch);
}

// How many were drawn before it was stopped; nothing where the device takes none.
std::optional<int> drawPages(QPagedPaintDevice& device, const std::vector<Sheet>& sheets,
                             const PageProgress& goOn) {
  QPainter painter;
  if (!goOn(0)) return 0;
  if (!painter.begin(&device)) return std::nullopt;
  int pages = 0;
  for (const Sheet& sheet : sheets) {
    if (pages > 0) {
      if (!goOn(pages)) break;
      if (sheet.size != sheets[static_cast<std::size_t>(pages - 1)].size)
        device.setPageSize(qtPageSize(sheet));
      if (!device.newPage()) return std::nullopt;
    }
    ++pages;
    painter.save();
    painter.scale(device.logicalDpiX() / 72.0, device.logicalDpiY() / 72.0);
    paint(painter, sheet);
    painter.restore();
  }
  if (!painter.end()) return std::nullopt;
  return pages;
}

QByteArray drawn(const std::vector<Sheet>& sheets, const QString& title, const PageProgress& goOn) {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  QPdfWriter writer(&buffer);
  writer.setResolution(kDotsPerInch);
  writer.setTitle(title);
  writer.setCreator(QStringLiteral("Stayalight"));
  writer.setPageMargins(QMarginsF());
  writer.setPageSize(qtPageSize(sheets.front()));
  const std::optional<int> pages = drawPages(writer, sheets, goOn);
  return pages == static_cast<int>(sheets.size()) ? bytes : QByteArray();
}

// QPdfWriter gives no outline and no language, and puts the time of printing in; this pass mends the three.
QByteArray finished(const QByteArray& bytes, const std::vector<Sheet>& sheets) {
  QPDF pdf;
  pdf.processMemoryFile("sheets", bytes.constData(), static_cast<size_t>(bytes.size()));
  QPDFObjectHandle root = pdf.getRoot();
  root.replaceKey("/Lang", QPDFObjectHandle::newUnicodeString("en-US"));
  QPDFObjectHandle info = pdf.getTrailer().getKey("/Info");
  if (info.isDictionary()) {
    info.removeKey("/CreationDate");
    info.removeKey("/ModDate");
  }
  const std::vector<QPDFObjectHandle> pages = pdf.getAllPages();
  std::vector<QPDFObjectHandle> items;
  QPDFObjectHandle outlines = pdf.makeIndirectObject(QPDFObjectHandle::parse("<< /Type /Outlines >>"));
  for (std::size_t i = 0; i < pages.size() && i < sheets.size(); ++i) {
    if (i > 0 && sheets[i].title == sheets[i - 1].title) continue;
    QPDFObjectHandle item = pdf.makeIndirectObject(QPDFObjectHandle::newDictionary());
    item.replaceKey("/Title", QPDFObjectHandle::newUnicodeString(sheets[i].title.toStdString()));
    item.replaceKey("/Parent", outlines);
    item.replaceKey("/Dest", QPDFObjectHandle::newArray({pages[i], QPDFObjectHandle::newName("/Fit")}));
    if (!items.empty()) {
      item.replaceKey("/Prev", items.back());
      items.back().replaceKey("/Next", item);
    }
    items.push_back(item);
  }
  if (!items.empty()) {
    outlines.replaceKey("/First", items.front());
    outlines.replaceKey("/Last", items.back());
    outlines.replaceKey("/Count", QPDFObjectHandle::newInteger(static_cast<long long>(items.size())));
    root.replaceKey("/Outlines", outlines);
  }
  QPDFWriter writer(pdf);
  writer.setOutputMemory();
  writer.setDeterministicID(true);
  writer.setStreamDataMode(qpdf_s_compress);
  writer.write();
  const std::shared_ptr<Buffer> out = writer.getBufferSharedPointer();
  return {reinterpret_cast<const char*>(out->getBuffer()), static_cast<qsizetype>(out->getSize())};
}

}  // namespace

QByteArray pdfBytes(const std::vector<Sheet>& sheets, const QString& title, const PageProgress& progress) {
  if (sheets.empty()) return {};
  const PageProgress goOn = progress ? progress : [](int) { return true; };
  const QByteArray bytes = drawn(sheets, title, goOn);
  if (bytes.isEmpty() || !goOn(static_cast<int>(sheets.size()))) return {};
  return finished(bytes, sheets);
}

Result<int> writePdf(const std::vector<Sheet>& sheets, const QString& path, const QString& title,
                     const PageProgress& progress) {
  bool stopped = false;
  const PageProgress goOn = [&](int pages) {
    stopped = stopped || (progress && !progress(pages));
    return !stopped;
  };
  const QByteArray bytes = pdfBytes(sheets, title, goOn);
  // The last chance to stop: from here on the file is written.
  if (!goOn(static_cast<int>(sheets.size()))) return say(kStopped, path.toStdString());
  if (bytes.isEmpty()) return say(kNothingDrawn, path.toStdString());
  QSaveFile file(path);
  if (!file.open(QIODevice::WriteOnly) || file.write(bytes) != bytes.size() || !file.commit()) {
    return say(kCannotWrite, path.toStdString(), file.errorString().toStdString());
  }
  return static_cast<int>(sheets.size());
}

Result<int> drawOn(QPagedPaintDevice& printer, const std::vector<Sheet>& sheets,
                   const PageProgress& progress) {
  const std::optional<int> pages = drawPages(
      printer, sheets, progress ? progress : [](int) { return true; });
  if (!pages) return Message{kNotPrinted, {}};
  return *pages;
}

QImage pageImage(const Sheet& sheet, double scale) {
  QImage image((sheet.size * scale).toSize(), QImage::Format_RGB32);
  image.fill(Qt::white);
  QPainter painter(&image);
  painter.scale(scale, scale);
  paint(painter, sheet);
  return image;
}

}  // namespace stayalight
