#include "ui/document/circuits_file.h"

#include <QtCore/QFileInfo>

#include "ui/document/plan_file.h"

namespace stayalight {

std::optional<Message> saveCircuits(const Plan& plan, const QString& path) {
  return writeBytes(path, QByteArray::fromStdString(circuitsCsv(plan)));
}

std::variant<ReadCircuits, CircuitsRefused> loadCircuits(const Plan& plan, const QString& path,
                                                         const Watch& watch) {
  const Result<QByteArray> bytes = readBytes(path);
  if (!bytes) return CircuitsRefused{{bytes.refusal()}};
  const QByteArray& text = bytes.value();
  return readCircuits(plan, {text.constData(), static_cast<std::size_t>(text.size())},
                      QFileInfo(path).fileName().toStdString(), watch);
}

}  // namespace stayalight
