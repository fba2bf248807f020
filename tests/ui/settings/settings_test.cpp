// The settings file, sound and broken.

#include <QtCore/QFile>
#include <QtCore/QTemporaryDir>
#include <QtTest/QtTest>

#include "core/edit/edit.h"
#include "ui/settings/settings.h"
#include "ui/wording/language.h"

using namespace stayalight;

class SettingsTest : public QObject {
  Q_OBJECT

 private Q_SLOTS:
  void whatIsWrittenIsRead();
  void aBadValueFallsBackAndIsNamed_data();
  void aBadValueFallsBackAndIsNamed();
  void aDamagedFileIsKeptAside();
  void newPlansStartWithTheDefaults();

 private:
  // Each under a name of its own: QSettings reads a file anew only where its time or its size has changed.
  [[nodiscard]] QString file(const QByteArray& text) {
    const QString path = folder_.filePath(QStringLiteral("stayalight%1.conf").arg(++files_));
    QFile out(path);
    if (!out.open(QIODevice::WriteOnly) || out.write(text) != text.size()) qFatal("cannot write");
    return path;
  }
  QTemporaryDir folder_;
  int files_ = 0;
};

void SettingsTest::whatIsWrittenIsRead() {
  Settings settings;
  settings.metric = true;
  settings.paper = PaperSize::a4;
  settings.firm = QStringLiteral("Ampère, Volt & Söhne; \"Ohm\"");
  settings.licence = QStringLiteral("E-12, 34");
  settings.drawnBy = QStringLiteral("@home");
  settings.decimalMark = DecimalMark::comma;
  settings.theme = Theme::contrast;
  settings.lessMotion = true;
  settings.autosaveSeconds = 17;
  const QString path = file({});
  {
    QSettings store(path, QSettings::IniFormat);
    writeSettings(settings, Settings{}, store);
  }
  const ReadSettings read = readSettings(QSettings(path, QSettings::IniFormat));
  QVERIFY(read.problems.empty());
  QVERIFY(read.settings == settings);
  // Back to the defaults, key by key.
  {
    QSettings store(path, QSettings::IniFormat);
    writeSettings(Settings{}, settings, store);
  }
  QVERIFY(readSettings(QSettings(path, QSettings::IniFormat)).settings == Settings{});
}

void SettingsTest::aBadValueFallsBackAndIsNamed_data() {
  QTest::addColumn<QByteArray>("line");
  QTest::addColumn<QString>("key");
  const auto row = [](const char* name, const QByteArray& line, const char* key) {
    QTest::newRow(name) << line << QString::fromLatin1(key);
  };
  row("units", "metric=perhaps", "metric");
  row("units, a number", "metric=2", "metric");
  row("paper", "paper=a3", "paper");
  row("theme", "theme=pink", "theme");
  row("theme, capitals", "theme=Dark", "theme");
  row("decimal mark", "decimalMark=;", "decimalMark");
  row("motion", "motion=", "motion");
  row("seconds, none", "autosaveSeconds=0", "autosaveSeconds");
  row("seconds, many", "autosaveSeconds=61", "autosaveSeconds");
  row("seconds, below", "autosaveSeconds=-3", "autosaveSeconds");
  row("seconds, huge", "autosaveSeconds=99999999999999999999", "autosaveSeconds");
  row("seconds, a fraction", "autosaveSeconds=3.5", "autosaveSeconds");
  row("firm, long", "firm=" + QByteArray(201, 'x'), "firm");
  row("firm, very long", "firm=" + QByteArray(2000000, 'x'), "firm");
  row("firm, control characters", "firm=\"a\\x7\\x1b[31m\"", "firm");
  row("licence, lines", "licence=\"a\\nb\"", "licence");
  row("drawn by, bytes", "drawnBy=@ByteArray(\\0\\x1)", "drawnBy");
}

void SettingsTest::aBadValueFallsBackAndIsNamed() {
  QFETCH(QByteArray, line);
  QFETCH(QString, key);
  const QString path = file("[General]\n" + line + "\n");
  const ReadSettings read = readSettings(QSettings(path, QSettings::IniFormat));
  QVERIFY(read.settings == Settings{});
  QCOMPARE(read.problems.size(), std::size_t{1});
  const ProgramLanguage language;
  const QString said = words(read.problems.front(), language);
  QVERIFY2(said.contains(path), qPrintable(said));
  QVERIFY2(said.contains(key), qPrintable(said));
  QVERIFY2(said.size() < 400, qPrintable(said));
}

void SettingsTest::aDamagedFileIsKeptAside() {
  const QByteArray text = "[General]\ntheme=dark\n[[[\nno equals sign\n\xff\xfe\n";
  const QString path = file(text);
  const ReadSettings read = readSettings(QSettings(path, QSettings::IniFormat));
  QVERIFY(!read.problems.empty());
  const QString said = words(read.problems.front(), ProgramLanguage());
  QVERIFY2(said.contains(path), qPrintable(said));
  QFile kept(path + QStringLiteral(".damaged"));
  QVERIFY(kept.open(QIODevice::ReadOnly));
  QCOMPARE(kept.readAll(), text);
}

void SettingsTest::newPlansStartWithTheDefaults() {
  Settings settings;
  settings.paper = PaperSize::a4;
  settings.firm = QStringLiteral("River Electric");
  settings.licence = QStringLiteral("77");
  settings.drawnBy = QStringLiteral("A. B.");
  const Plan plan = withDefaults(newPlan(), settings);
  QVERIFY(plan.site->paper.is(PaperSize::a4));
  QCOMPARE(plan.site->firm, std::string("River Electric"));
  QCOMPARE(plan.site->licence, std::string("77"));
  QCOMPARE(plan.site->drawnBy, std::string("A. B."));
  // What the plan says itself stays.
  settings.firm = QStringLiteral("Other");
  QCOMPARE(withDefaults(plan, settings).site->firm, std::string("River Electric"));
  QVERIFY(withDefaults(newPlan(), Settings{}) == newPlan());
}

QTEST_MAIN(SettingsTest)
#include "settings_test.moc"
