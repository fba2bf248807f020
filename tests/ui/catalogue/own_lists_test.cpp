// The files of a person's own lists: what is kept comes back, and nothing that is there is lost.

#include <QtCore/QDir>
#include <QtCore/QFile>
#include <QtCore/QFileInfo>
#include <QtCore/QStandardPaths>
#include <QtTest/QtTest>

#include "core/edit/edit.h"
#include "core/message/message.h"
#include "ui/catalogue/own_lists.h"

using namespace stayalight;

namespace {

QByteArray contents(const QString& path) {
  QFile file(path);
  return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}
void write(const QString& path, const QByteArray& bytes) {
  QDir().mkpath(QFileInfo(path).absolutePath());
  QFile file(path);
  QVERIFY(file.open(QIODevice::WriteOnly));
  file.write(bytes);
}
QString said(const Message& message) { return QString::fromStdString(render(message, plainEnglish())); }

Plan plan() {
  Plan made = newPlan();
  made.inverter.edit().name = "Garage: \"A/B\"";
  made.inverter.edit().continuous = Watts(6000);
  OverloadPoint point;
  point.time = Seconds(10);
  point.watts = Watts(9000);
  made.inverter.edit().overload = {point};
  made.battery.edit().packs = 3;
  made.battery.edit().nominalKilowattHours = 5.1;
  made.panels[1].edit().spaces = 12;
  made.panels[1].edit().busRating = RatingAmperes(125);
  return made;
}

}  // namespace

class OwnListsTest : public QObject {
  Q_OBJECT

 private Q_SLOTS:
  void initTestCase() {
    QCoreApplication::setOrganizationName(QStringLiteral("stayalight"));
    QCoreApplication::setApplicationName(QStringLiteral("own-lists-test"));
    QStandardPaths::setTestModeEnabled(true);
  }
  void init() { QDir(ownFolder()).removeRecursively(); }

  void theProgramBringsItsLoads() {
    QVERIFY(householdLoads().entries.size() >= 40);
    QVERIFY(householdLoads().refused.empty());
  }

  void loadsAreKeptInOneTable() {
    QVERIFY(ownLoads().entries.empty() && ownLoads().refused.empty());
    Load load = householdLoads().entries.front().load;
    load.name = "Well pump; \"old\"";
    QVERIFY(!keepLoad(load));
    QVERIFY(!keepLoad(load));
    const Catalogue own = ownLoads();
    QVERIFY(own.refused.empty());
    QCOMPARE(own.entries.size(), 2u);
    QVERIFY(own.entries[0].load.name == load.name);
    QVERIFY(own.entries[0].load.catalogueId != own.entries[1].load.catalogueId);
  }

  void aRowThatCannotBeReadIsNeitherLostNorInTheWay() {
    const QString path = ownFolder() + QStringLiteral("/loads.csv");
    const QByteArray text = "# mine\nid,name,running_W\nlamp,Lamp,12\nkiln,Kiln,hot\n";
    write(path, text);
    const Catalogue own = ownLoads();
    QCOMPARE(own.entries.size(), 1u);
    QCOMPARE(own.refused.size(), 1u);
    for (const char* part : {"loads.csv", "line 4", "running_W", "\"hot\"", "number"})
      QVERIFY2(said(own.refused[0]).contains(QLatin1String(part)), qPrintable(said(own.refused[0])));
    const auto why = keepLoad(householdLoads().entries.front().load);
    QVERIFY(why);
    QVERIFY2(said(*why).contains(QLatin1String("line 4")), qPrintable(said(*why)));
    QCOMPARE(contents(path), text);
    write(path, "# mine\nid,name,running_W\nlamp,Lamp,12\nkiln,Kiln,9000\n");
    QVERIFY(!keepLoad(householdLoads().entries.front().load));
    QCOMPARE(ownLoads().entries.size(), 3u);
    QVERIFY(contents(path).startsWith("# mine\n"));
  }

  void recordsComeBack_data() {
    QTest::addColumn<int>("kind");
    QTest::newRow("inverter") << static_cast<int>(RecordKind::inverter);
    QTest::newRow("battery") << static_cast<int>(RecordKind::battery);
    QTest::newRow("panel") << static_cast<int>(RecordKind::panel);
  }
  void recordsComeBack() {
    QFETCH(int, kind);
    const EntityRef ref{static_cast<RecordKind>(kind), kind == static_cast<int>(RecordKind::panel) ? 2 : 0};
    QVERIFY(hasOwnList(ref.kind));
    QVERIFY(ownRecords(ref.kind).empty());
    const Result<QString> kept = keepRecord(plan(), ref, QStringLiteral("Unit: \"A/B\""));
    QVERIFY2(kept.ok(), kept ? "" : qPrintable(said(kept.refusal())));
    // The same name once more: beside the first, which stays.
    const Result<QString> again = keepRecord(newPlan(), ref, QStringLiteral("Unit: \"A/B\""));
    QVERIFY(again.ok());
    QVERIFY(kept.value() != again.value());
    const std::vector<OwnFile> files = ownRecords(ref.kind);
    QCOMPARE(files.size(), 2u);
    const auto first = std::find_if(files.begin(), files.end(),
                                    [&](const OwnFile& file) { return file.name == kept.value(); });
    QVERIFY(first != files.end());
    const Result<Plan> taken = takeRecord(newPlan(), ref, first->path);
    QVERIFY2(taken.ok(), taken ? "" : qPrintable(said(taken.refusal())));
    if (ref.kind == RecordKind::inverter) QVERIFY(*taken.value().inverter == *plan().inverter);
    if (ref.kind == RecordKind::battery) QVERIFY(*taken.value().battery == *plan().battery);
    if (ref.kind == RecordKind::panel) QVERIFY(*taken.value().panels[1] == *plan().panels[1]);
    // Nothing else of the house is in the file.
    QVERIFY(!contents(first->path).contains("circuits"));
  }

  void aBadFileSaysWhyAndChangesNothing_data() {
    QTest::addColumn<QByteArray>("bytes");
    QTest::addColumn<QString>("said");
    QTest::newRow("no JSON") << QByteArray("{ no plan") << QStringLiteral("line 1");
    QTest::newRow("another record")
        << QByteArray(R"({"stayalight": {"format": 1, "level": 1}, "battery": {"packs": 2}})")
        << QStringLiteral("inverter");
    QTest::newRow("a wrong value")
        << QByteArray("{\"stayalight\": {\"format\": 1, \"level\": 1},\n\"inverter\": {\"units\": \"two\"}}")
        << QStringLiteral("line 2");
    QTest::newRow("empty") << QByteArray() << QStringLiteral("empty");
  }
  void aBadFileSaysWhyAndChangesNothing() {
    QFETCH(QByteArray, bytes);
    QFETCH(QString, said);
    const QString path = ownFolder() + QStringLiteral("/inverter/bad.json");
    write(path, bytes);
    const Result<Plan> taken = takeRecord(newPlan(), {RecordKind::inverter}, path);
    QVERIFY(!taken.ok());
    const QString why = ::said(taken.refusal());
    QVERIFY2(why.contains(said) && why.contains(QLatin1String("bad.json")), qPrintable(why));
    QCOMPARE(contents(path), bytes);
  }

  void templatesAreWholePlans() {
    const Result<QString> kept = keepTemplate(plan(), QStringLiteral("../Two wells"));
    QVERIFY(kept.ok());
    const std::vector<OwnFile> files = ownTemplates();
    QCOMPARE(files.size(), 1u);
    QVERIFY2(files[0].path.startsWith(ownFolder() + QStringLiteral("/templates/")),
             qPrintable(files[0].path));
    QVERIFY(contents(files[0].path).contains("panels"));
  }
};

QTEST_MAIN(OwnListsTest)
#include "own_lists_test.moc"
