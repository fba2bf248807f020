#include "ui/settings/settings.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QDir>
#include <QtCore/QFile>
#include <QtCore/QPointer>
#include <algorithm>
#include <array>

namespace stayalight {
namespace {

constexpr MessageId kDamaged{"settings.damaged"};
constexpr MessageId kUnreadable{"settings.unreadable"};
constexpr MessageId kNoValue{"settings.no_value"};
constexpr MessageId kYesOrNo{"settings.expected.yes_or_no"};
constexpr MessageId kWord{"settings.expected.word"};
constexpr MessageId kSeconds{"settings.expected.seconds"};
constexpr MessageId kText{"settings.expected.text"};

constexpr std::array kThemes = {"desktop", "light", "dark", "contrast"};
constexpr std::array kMarks = {"system", "point", "comma"};

const QString kMetric = QStringLiteral("metric");
const QString kPaper = QStringLiteral("paper");
const QString kFirm = QStringLiteral("firm");
const QString kLicence = QStringLiteral("licence");
const QString kDrawnBy = QStringLiteral("drawnBy");
const QString kDecimalMark = QStringLiteral("decimalMark");
const QString kTheme = QStringLiteral("theme");
const QString kMotion = QStringLiteral("motion");
const QString kAutosave = QStringLiteral("autosaveSeconds");

class Reader {
 public:
  explicit Reader(const QSettings& store) : store_(store) {}

  /// None where the key is not there, or holds no such value.
  [[nodiscard]] std::optional<QString> text(const QString& key) {
    if (!store_.contains(key)) return std::nullopt;
    const QVariant value = store_.value(key);
    // An unquoted comma in the file makes a list of a text.
    const QString text = value.typeId() == QMetaType::QStringList
                             ? value.toStringList().join(QStringLiteral(", "))
                             : value.toString();
    if (value.typeId() != QMetaType::QStringList && !value.canConvert<QString>()) {
      refuse(key, {}, say(kText, std::int64_t{kLongestSetting}));
      return std::nullopt;
    }
    return text;
  }
  void yesOrNo(const QString& key, bool& into, bool inverted = false) {
    const auto found = text(key);
    if (!found) return;
    if (*found == QLatin1String("true") || *found == QLatin1String("1"))
      into = !inverted;
    else if (*found == QLatin1String("false") || *found == QLatin1String("0"))
      into = inverted;
    else
      refuse(key, *found, say(kYesOrNo));
  }
  void line(const QString& key, QString& into) {
    const auto found = text(key);
    if (!found) return;
    const bool plain = std::none_of(found->begin(), found->end(), [](QChar c) {
      return c.category() == QChar::Other_Control || c == QChar::ReplacementCharacter;
    });
    if (found->size() > kLongestSetting || !plain)
      refuse(key, *found, say(kText, std::int64_t{kLongestSetting}));
    else
      into = *found;
  }
  /// Index of the word.
  template <class Words>
  [[nodiscard]] std::optional<std::size_t> word(const QString& key, const Words& words) {
    const auto found = text(key);
    if (!found) return std::nullopt;
    std::string list;
    for (std::size_t i = 0; i < words.size(); ++i) {
      const std::string_view word(words[i]);
      if (found->toStdString() == word) return i;
      list += (i > 0 ? ", " : "") + std::string(word);
    }
    refuse(key, *found, say(kWord, list));
    return std::nullopt;
  }
  void number(const QString& key, int least, int most, int& into) {
    const auto found = text(key);
    if (!found) return;
    bool whole = false;
    const int value = found->toInt(&whole);
    if (whole && value >= least && value <= most)
      into = value;
    else
      refuse(key, *found, say(kSeconds, std::int64_t{least}, std::int64_t{most}));
  }

  std::vector<Message> problems;

 private:
  void refuse(const QString& key, QString value, const Message& expected) {
    value = value.simplified();
    if (value.size() > 40) value = value.left(40) + QChar(0x2026);
    problems.push_back(say(kNoValue, QDir::toNativeSeparators(store_.fileName()).toStdString(),
                           key.toStdString(), value.toStdString(), std::vector<Message>{expected}));
  }
  const QSettings& store_;
};

/// What cannot be read is kept beside the file: the next change writes the file afresh.
Message keepDamaged(const QSettings& store) {
  const QString kept = store.fileName() + QStringLiteral(".damaged");
  QFile::remove(kept);
  QFile::copy(store.fileName(), kept);
  return say(kDamaged, QDir::toNativeSeparators(store.fileName()).toStdString(),
             QDir::toNativeSeparators(kept).toStdString());
}

}  // namespace

ReadSettings readSettings(const QSettings& store) {
  ReadSettings out;
  Reader reader(store);
  Settings& settings = out.settings;
  reader.yesOrNo(kMetric, settings.metric);
  reader.yesOrNo(kMotion, settings.lessMotion, true);
  if (const auto paper = reader.word(kPaper, ChoiceWords<PaperSize>::words))
    settings.paper = static_cast<PaperSize>(*paper);
  if (const auto mark = reader.word(kDecimalMark, kMarks))
    settings.decimalMark = static_cast<DecimalMark>(*mark);
  if (const auto theme = reader.word(kTheme, kThemes); theme && *theme > 0)
    settings.theme = static_cast<Theme>(*theme - 1);
  reader.line(kFirm, settings.firm);
  reader.line(kLicence, settings.licence);
  reader.line(kDrawnBy, settings.drawnBy);
  reader.number(kAutosave, kLeastAutosaveSeconds, kMostAutosaveSeconds, settings.autosaveSeconds);
  if (store.status() == QSettings::FormatError)
    out.problems.push_back(keepDamaged(store));
  else if (store.status() == QSettings::AccessError)
    out.problems.push_back(say(kUnreadable, QDir::toNativeSeparators(store.fileName()).toStdString()));
  out.problems.insert(out.problems.end(), reader.problems.begin(), reader.problems.end());
  return out;
}

void writeSettings(const Settings& settings, const Settings& before, QSettings& store) {
  const auto put = [&](const QString& key, const auto& now, const auto& then, const QVariant& value) {
    if (now != then) store.setValue(key, value);
  };
  const auto word = [](const char* text) { return QVariant(QString::fromLatin1(text)); };
  put(kMetric, settings.metric, before.metric, settings.metric);
  put(kMotion, settings.lessMotion, before.lessMotion, !settings.lessMotion);
  const std::string_view paper = ChoiceWords<PaperSize>::words[static_cast<std::size_t>(settings.paper)];
  put(kPaper, settings.paper, before.paper,
      QString::fromLatin1(paper.data(), static_cast<qsizetype>(paper.size())));
  put(kDecimalMark, settings.decimalMark, before.decimalMark,
      word(kMarks[static_cast<std::size_t>(settings.decimalMark)]));
  put(kTheme, settings.theme, before.theme,
      word(kThemes[settings.theme ? static_cast<std::size_t>(*settings.theme) + 1 : 0]));
  put(kFirm, settings.firm, before.firm, settings.firm);
  put(kLicence, settings.licence, before.licence, settings.licence);
  put(kDrawnBy, settings.drawnBy, before.drawnBy, settings.drawnBy);
  put(kAutosave, settings.autosaveSeconds, before.autosaveSeconds, settings.autosaveSeconds);
}

Plan withDefaults(Plan plan, const Settings& settings) {
  Site site = *plan.site;
  site.paper = settings.paper;
  const auto fill = [](std::string& text, const QString& value) {
    if (text.empty()) text = value.toStdString();
  };
  fill(site.firm, settings.firm);
  fill(site.licence, settings.licence);
  fill(site.drawnBy, settings.drawnBy);
  if (site != *plan.site) plan.site = site;
  return plan;
}

UserSettings& UserSettings::instance() {
  static QPointer<UserSettings> made;
  if (!made) {
    made = new UserSettings(QCoreApplication::instance());
    made->read();
  }
  return *made;
}

void UserSettings::set(const Settings& settings) {
  if (settings == now_) return;
  QSettings store;
  writeSettings(settings, now_, store);
  now_ = settings;
  Q_EMIT changed();
}

void UserSettings::read() {
  QSettings store;
  ReadSettings read = readSettings(store);
  problems_ = std::move(read.problems);
  if (read.settings == now_) return;
  now_ = read.settings;
  Q_EMIT changed();
}

}  // namespace stayalight
