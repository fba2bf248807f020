#include "app/headless.h"

#include <QtCore/QFile>
#include <QtCore/QFileInfo>
#include <QtCore/QTemporaryDir>
#include <QtGui/QGuiApplication>
#include <cstdio>

#include "core/assess/assess.h"
#include "core/message/version.h"
#include "core/report/report.h"
#include "ui/board/draw.h"
#include "ui/document/plan_file.h"
#include "ui/paper/print.h"
#include "ui/style/fonts.h"
#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr MessageId kInput{"command.input"};
constexpr MessageId kOutput{"command.output"};
constexpr MessageId kFaces{"command.faces"};
constexpr MessageId kNoDanger{"command.no_findings"};
constexpr MessageId kFindingLine{"command.finding"};
constexpr MessageId kSeverity[] = {MessageId{"command.danger"}, MessageId{"command.must_fix"},
                                   MessageId{"command.check_on_site"}, MessageId{"command.advice"}};

std::string inputName(const std::string& plan) {
  return plan == "-" ? render(say(kInput), plainEnglish()) : plan;
}

Result<ReadPlan> readInput() {
  const std::size_t most = ReadLimits{}.bytes;
  std::string text;
  char piece[65536];
  while (text.size() <= most) {
    const std::size_t got = std::fread(piece, 1, sizeof piece, stdin);
    if (got == 0) break;
    text.append(piece, got);
  }
  return readPlan(text, inputName("-"));
}

/// The plan, with notes of its reading on the standard error; nothing where it was refused.
std::optional<Plan> planOf(const std::string& plan) {
  auto read = plan == "-" ? readInput() : loadPlan(QString::fromStdString(plan));
  if (!read) {
    writeError(read.refusal());
    return std::nullopt;
  }
  for (const Message& note : read.value().notes) writeError(note);
  return std::move(read.value().plan);
}

std::string baseName(const std::string& plan) {
  return plan == "-" ? inputName(plan) : QFileInfo(QString::fromStdString(plan)).fileName().toStdString();
}

bool writeOutput(const char* bytes, std::size_t size) {
  const bool written = std::fwrite(bytes, 1, size, stdout) == size && std::fflush(stdout) == 0;
  if (!written) writeError(say(kOutput));
  return written;
}
bool writeOutput(const std::string& text) { return writeOutput(text.data(), text.size()); }

ProgramLanguage languageFor(const Plan& plan, const CommandLine& line) {
  ProgramLanguage language;
  language.follow(plan);
  if (line.metric) language.setUnits(UnitSystem::metric);
  return language;
}

/// Holds what drawing needs; `ready` is false, and said, where the faces are not there.
struct Drawing {
  Drawing(int& argc, char** argv) : application(argc, argv), ready(loadFaces()) {
    if (!ready) writeError(say(kFaces));
  }
  QGuiApplication application;
  bool ready;
};

/// The offscreen platform looks for a folder of the session that a machine without a desktop does not have;
/// that is no word for the person who prints.
void withoutDesktopWords(QtMsgType, const QMessageLogContext&, const QString& text) {
  if (text.startsWith(u"QStandardPaths:")) return;
  const QByteArray line = text.toLocal8Bit() + '\n';
  std::fwrite(line.constData(), 1, static_cast<std::size_t>(line.size()), stderr);
}

void useOffscreen() {
  qInstallMessageHandler(withoutDesktopWords);
  if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
}

}  // namespace

void writeError(const Message& message) {
  const std::string line = "stayalight: " + render(message, plainEnglish()) + "\n";
  std::fwrite(line.data(), 1, line.size(), stderr);
}

int assessPlans(const CommandLine& line) {
  std::string text;
  int exit = kExitOk;
  for (const std::string& name : line.plans) {
    const auto plan = planOf(name);
    if (!plan) {
      exit = kExitError;
      continue;
    }
    std::string report =
        reportJson(*plan, assess(*plan, {.record = true}), baseName(name), languageFor(*plan, line));
    if (line.plans.size() > 1) {
      while (!report.empty() && report.back() == '\n') report.pop_back();
      text += (text.empty() ? "" : ",\n") + report;
    } else {
      text = report;
    }
  }
  if (line.plans.size() > 1) text = "[\n" + text + "\n]\n";
  return writeOutput(text) ? exit : kExitError;
}

int reviewPlans(const CommandLine& line) {
  std::string text;
  bool danger = false, error = false;
  for (const std::string& name : line.plans) {
    const auto plan = planOf(name);
    if (!plan) {
      error = true;
      continue;
    }
    const ProgramLanguage language = languageFor(*plan, line);
    const Assessment assessment = assess(*plan, {.record = true});
    for (const Finding& finding : assessment.findings) {
      danger = danger || finding.severity == Severity::danger;
      const std::string citation = finding.rule.key.empty() ? std::string() : language.citation(finding.rule);
      text += render(say(kFindingLine, inputName(name),
                         std::vector<Message>{say(kSeverity[static_cast<std::size_t>(finding.severity)])},
                         render(finding.plain, language), render(finding.trade, language)),
                     language);
      text += citation.empty() ? "\n" : " [" + citation + "]\n";
    }
    if (assessment.findings.empty()) text += render(say(kNoDanger, inputName(name)), language) + "\n";
  }
  if (!writeOutput(text)) return kExitError;
  return error ? kExitError : danger ? kExitDanger : kExitOk;
}

int printPlan(const CommandLine& line, int& argc, char** argv) {
  const auto plan = planOf(line.plans.front());
  if (!plan) return kExitError;
  useOffscreen();
  const Drawing drawing(argc, argv);
  if (!drawing.ready) return kExitError;
  const ProgramLanguage language = languageFor(*plan, line);
  QStringList words;
  for (const std::string& word : line.sheets) words << QString::fromStdString(word);
  const auto chosen = chosenSheets(*plan, words, language);
  if (!chosen) {
    writeError(chosen.refusal());
    return kExitError;
  }
  PaperOptions options;
  options.size = line.paper.empty()   ? plan->site->paper.valueOr(PaperSize::letter)
                 : line.paper == "a4" ? PaperSize::a4
                                      : PaperSize::letter;
  options.planName = QString::fromStdString(baseName(line.plans.front()));
  options.version = QString::fromUtf8(kVersion.data(), static_cast<qsizetype>(kVersion.size()));
  const std::vector<Sheet> pages =
      sheets(*plan, assess(*plan, {.record = true}), chosen.value(), language, options);
  const QString title =
      plan->site->name.empty() ? options.planName : QString::fromStdString(plan->site->name);
  if (line.out == "-") {
    const QByteArray bytes = pdfBytes(pages, title);
    if (bytes.isEmpty()) {
      writeError(say(kOutput));
      return kExitError;
    }
    return writeOutput(bytes.constData(), static_cast<std::size_t>(bytes.size())) ? kExitOk : kExitError;
  }
  const auto written = writePdf(pages, QString::fromStdString(line.out), title);
  if (!written) writeError(written.refusal());
  return written ? kExitOk : kExitError;
}

int drawPlan(const CommandLine& line, int& argc, char** argv) {
  const auto plan = planOf(line.plans.front());
  if (!plan) return kExitError;
  useOffscreen();
  const Drawing drawing(argc, argv);
  if (!drawing.ready) return kExitError;
  const ProgramLanguage language = languageFor(*plan, line);
  const Assessment assessment = assess(*plan, {.record = true});
  if (line.out != "-") {
    const auto wrong = drawBoards(*plan, assessment, language, QString::fromStdString(line.out));
    if (wrong) writeError(*wrong);
    return wrong ? kExitError : kExitOk;
  }
  const QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("boards.png"));
  if (const auto wrong = drawBoards(*plan, assessment, language, path)) {
    writeError(*wrong);
    return kExitError;
  }
  QFile file(path);
  if (!file.open(QIODevice::ReadOnly)) {
    writeError(say(kOutput));
    return kExitError;
  }
  const QByteArray bytes = file.readAll();
  return writeOutput(bytes.constData(), static_cast<std::size_t>(bytes.size())) ? kExitOk : kExitError;
}

}  // namespace stayalight
