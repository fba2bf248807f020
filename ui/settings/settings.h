#pragma once

// What a person has set for the program on this computer, apart from any plan. Read with safe defaults from
// whatever stands in the settings file.

#include <QtCore/QObject>
#include <QtCore/QSettings>
#include <optional>
#include <vector>

#include "core/message/message.h"
#include "core/plan/plan.h"
#include "ui/style/palette.h"

namespace stayalight {

enum class DecimalMark : std::uint8_t { system, point, comma };

inline constexpr int kLeastAutosaveSeconds = 1;
inline constexpr int kMostAutosaveSeconds = 60;
inline constexpr int kLongestSetting = 200;  ///< characters of a text

struct Settings {
  bool metric = false;
  PaperSize paper = PaperSize::letter;  ///< of new plans
  QString firm, licence, drawnBy;       ///< of new plans
  DecimalMark decimalMark = DecimalMark::system;
  std::optional<Theme> theme;  ///< none: as the desktop
  bool lessMotion = false;
  int autosaveSeconds = 3;  ///< after a change
  friend bool operator==(const Settings&, const Settings&) = default;
};

struct ReadSettings {
  Settings settings;
  std::vector<Message> problems;  ///< the file as a whole, or a key whose value is none: its default holds
};
[[nodiscard]] ReadSettings readSettings(const QSettings& store);
/// Writes the keys that differ from what stood there.
void writeSettings(const Settings& settings, const Settings& before, QSettings& store);

/// A new plan with paper, firm, licence and drawn-by where it does not say them itself.
[[nodiscard]] Plan withDefaults(Plan plan, const Settings& settings);

/// The settings of the user who runs the program; all windows follow the same ones.
class UserSettings : public QObject {
  Q_OBJECT
 public:
  /// The one of the application; made at the first call.
  static UserSettings& instance();

  [[nodiscard]] const Settings& now() const { return now_; }
  void set(const Settings& settings);
  /// Reads the file afresh.
  void read();
  /// What was wrong with the file, once.
  [[nodiscard]] std::vector<Message> takeProblems() { return std::exchange(problems_, {}); }

 Q_SIGNALS:
  void changed();

 private:
  explicit UserSettings(QObject* parent) : QObject(parent) {}
  Settings now_;
  std::vector<Message> problems_;
};

}  // namespace stayalight
