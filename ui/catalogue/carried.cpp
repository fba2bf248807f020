#include "ui/catalogue/carried.h"

#include <QtCore/QMimeData>
#include <QtCore/QStringList>

#include "core/edit/part.h"
#include "core/file/file.h"
#include "ui/inspector/entity_text.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kNothingCarried{"catalogue.nothing_carried"};
constexpr MessageId kClipboard{"catalogue.clipboard"};

std::string_view view(const QByteArray& bytes) {
  return {bytes.constData(), static_cast<std::size_t>(bytes.size())};
}
QString format(const char* name) { return QString::fromLatin1(name); }

/// Name, place, amperes, poles and loads, parted by tabs as a spreadsheet takes them.
QString lineOf(const Plan& plan, const Circuit& circuit, const Language& language) {
  const Breaker& breaker = *find(plan, circuit.planned);
  QStringList loads;
  for (const Load& load : circuit.loads) loads << QString::fromStdString(load.name);
  return QStringList{QString::fromStdString(circuit.name),
                     QString::fromStdString(breakerPlace(plan, breaker.id, language)),
                     QString::number(breaker.rating.count()), QString::number(breaker.poles),
                     loads.join(QLatin1String(", "))}
      .join(QLatin1Char('\t'));
}

}  // namespace

std::unique_ptr<QMimeData> carriedLoad(const CatalogueEntry& entry) {
  auto data = std::make_unique<QMimeData>();
  data->setData(format(kLoadFormat), QByteArray::fromStdString(writeCatalogue(std::span(&entry, 1))));
  data->setText(QString::fromStdString(entry.load.name));
  return data;
}

std::optional<CatalogueEntry> loadIn(const QMimeData& data) {
  const QByteArray bytes = data.data(format(kLoadFormat));
  Catalogue read = readCatalogue(view(bytes), kLoadFormat);
  if (read.entries.size() != 1) return std::nullopt;
  return std::move(read.entries.front());
}

Result<std::unique_ptr<QMimeData>> carriedCircuits(const Plan& plan, std::span<const CircuitId> circuits,
                                                   const Language& language) {
  const Result<Plan> part = partOf(plan, circuits);
  if (!part) return part.refusal();
  constexpr std::string_view kParts[] = {"panels", "breakers", "circuits"};
  auto data = std::make_unique<QMimeData>();
  data->setData(format(kCircuitsFormat), QByteArray::fromStdString(writePart(part.value(), kParts)));
  QStringList lines;
  for (const auto& circuit : part.value().circuits) lines << lineOf(part.value(), *circuit, language);
  data->setText(lines.join(QLatin1Char('\n')));
  return data;
}

Result<Plan> circuitsIn(const QMimeData* data, const Language& language) {
  if (data == nullptr || !data->hasFormat(format(kCircuitsFormat))) return say(kNothingCarried);
  const QByteArray bytes = data->data(format(kCircuitsFormat));
  Result<ReadPlan> read = readPlan(view(bytes), words(language, kClipboard).toStdString());
  if (!read) return read.refusal();
  return std::move(read).value().plan;
}

}  // namespace stayalight
