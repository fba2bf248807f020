#include <QtWidgets/QDialog>
#include <QtWidgets/QDialogButtonBox>
#include <QtWidgets/QLabel>
#include <QtWidgets/QMessageBox>
#include <QtWidgets/QScrollArea>
#include <QtWidgets/QVBoxLayout>

#include "core/message/version.h"
#include "ui/settings/settings_dialog.h"
#include "ui/shell/main_window.h"
#include "ui/style/application.h"

namespace stayalight {
namespace {

constexpr MessageId kSettingsTitle{"settings.title"};
constexpr MessageId kCautionsTitle{"shell.cautions.title"};
constexpr std::array<MessageId, 7> kCautions = {
    MessageId{"shell.cautions.aid"},       MessageId{"shell.cautions.live"},
    MessageId{"shell.cautions.licensed"},  MessageId{"shell.cautions.decide"},
    MessageId{"shell.cautions.estimates"}, MessageId{"shell.cautions.medical"},
    MessageId{"shell.cautions.private"}};
constexpr MessageId kAboutTitle{"shell.about.title"};
constexpr MessageId kAboutText{"shell.about.text"};
constexpr MessageId kAboutLicence{"shell.about.licence"};
constexpr MessageId kAboutFonts{"shell.about.fonts"};
constexpr MessageId kKeysTitle{"shell.keys.title"};
constexpr std::array<MessageId, 11> kKeys = {
    MessageId{"shell.keys.arrows"}, MessageId{"shell.keys.m"},           MessageId{"shell.keys.b"},
    MessageId{"shell.keys.enter"},  MessageId{"shell.keys.w"},           MessageId{"shell.keys.delete"},
    MessageId{"shell.keys.survey"}, MessageId{"shell.keys.survey_rows"}, MessageId{"shell.keys.escape"},
    MessageId{"shell.keys.start"},  MessageId{"shell.keys.undo"}};
constexpr int kWidth = 520;

void showPage(QWidget* parent, const QString& name, const QString& title, const QStringList& paragraphs) {
  auto* dialog = new QDialog(parent);
  dialog->setObjectName(name);
  dialog->setAttribute(Qt::WA_DeleteOnClose);
  dialog->setWindowTitle(title);
  auto* column = new QVBoxLayout(dialog);
  column->setContentsMargins(24, 20, 24, 16);
  column->setSpacing(10);
  auto* head = new QLabel(title, dialog);
  head->setFont(screenFont(Face::condensed, 18, Weight::medium));
  column->addWidget(head);
  for (const QString& paragraph : paragraphs) {
    auto* label = new QLabel(paragraph, dialog);
    label->setFont(screenFont(Face::text, 13));
    label->setWordWrap(true);
    label->setTextFormat(Qt::PlainText);
    label->setMinimumWidth(scaled(kWidth));
    label->setTextInteractionFlags(Qt::TextSelectableByMouse);
    column->addWidget(label);
  }
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, dialog);
  QObject::connect(buttons, &QDialogButtonBox::rejected, dialog, &QDialog::reject);
  column->addWidget(buttons);
  dialog->show();
}

template <std::size_t N>
QStringList all(const Language& language, const std::array<MessageId, N>& ids) {
  QStringList paragraphs;
  for (const MessageId id : ids) paragraphs << words(language, id);
  return paragraphs;
}

}  // namespace

void MainWindow::showSettings() {
  auto* open = findChild<QDialog*>(QStringLiteral("settingsPage"));
  if (open == nullptr) open = new SettingsDialog(UserSettings::instance(), language_, this);
  open->show();
  open->raise();
  open->activateWindow();
}

void MainWindow::tellSettingsProblems() {
  QStringList lines;
  for (const Message& problem : UserSettings::instance().takeProblems()) lines << words(problem, language_);
  if (lines.isEmpty()) return;
  QMessageBox box(QMessageBox::Information, words(language_, kSettingsTitle),
                  lines.join(QStringLiteral("\n\n")), QMessageBox::Ok, this);
  box.setObjectName(QStringLiteral("settingsBox"));
  box.setTextFormat(Qt::PlainText);
  box.exec();
}

void MainWindow::showKeys() {
  showPage(this, QStringLiteral("keysPage"), words(language_, kKeysTitle), all(language_, kKeys));
}

void MainWindow::showCautions() {
  showPage(this, QStringLiteral("cautionsPage"), words(language_, kCautionsTitle), all(language_, kCautions));
}

void MainWindow::showAbout() {
  QStringList paragraphs{words(language_, kAboutText, std::string(kVersion)), words(language_, kAboutLicence),
                         words(language_, kAboutFonts)};
  paragraphs << words(language_, kCautions[0]) << words(language_, kCautions[3]);
  showPage(this, QStringLiteral("aboutPage"), words(language_, kAboutTitle), paragraphs);
}

}  // namespace stayalight
