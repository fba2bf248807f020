#include "ui/style/motion.h"

#include <QtCore/QSettings>
#include <QtCore/QStandardPaths>
#include <QtWidgets/QApplication>
#include <QtWidgets/QStyle>

namespace stayalight {
namespace {

const QLatin1String kKey("motion");

// Qt 6.4 hands on no such wish of a desktop; each of the two large ones keeps it in a file of its own.
bool desktopWantsMotion() {
  if (QApplication::style()->styleHint(QStyle::SH_Widget_Animation_Duration) <= 0) return false;
  const QString folder = QStandardPaths::writableLocation(QStandardPaths::GenericConfigLocation);
  const QSettings plasma(folder + QStringLiteral("/kdeglobals"), QSettings::IniFormat);
  if (plasma.value(QStringLiteral("KDE/AnimationDurationFactor"), 1.0).toDouble() <= 0.0) return false;
  for (const char* version : {"3.0", "4.0"}) {
    const QSettings gtk(folder + QStringLiteral("/gtk-%1/settings.ini").arg(QLatin1String(version)),
                        QSettings::IniFormat);
    if (!gtk.value(QStringLiteral("Settings/gtk-enable-animations"), true).toBool()) return false;
  }
  return true;
}

}  // namespace

bool motionChosen() { return QSettings().value(kKey, true).toBool(); }

void setMotionWanted(bool wanted) { QSettings().setValue(kKey, wanted); }

bool motionWanted() { return motionChosen() && desktopWantsMotion(); }

}  // namespace stayalight
