#include "ui/shell/actions.h"

#include <QtGui/QAction>
#include <QtGui/QActionGroup>
#include <QtWidgets/QMenu>
#include <QtWidgets/QMenuBar>

#include "ui/wording/language.h"

namespace stayalight {
namespace {

constexpr CommandRow kCommands[] = {
    {Command::newPlan, Menu::file, "new", "Ctrl+N", Icon::panel},
    {Command::newWindow, Menu::file, "new_window", "Ctrl+Shift+N", std::nullopt},
    {Command::open, Menu::file, "open", "Ctrl+O", Icon::folder},
    {Command::openElsewhere, Menu::file, "open_elsewhere", "Ctrl+Shift+O", std::nullopt},
    {Command::sample, Menu::file, "sample", "", std::nullopt},
    {Command::save, Menu::file, "save", "Ctrl+S", std::nullopt, true},
    {Command::saveAs, Menu::file, "save_as", "Ctrl+Shift+S", std::nullopt},
    {Command::print, Menu::file, "print", "Ctrl+P", Icon::sheet, true},
    {Command::savePdf, Menu::file, "save_pdf", "Ctrl+E", std::nullopt},
    {Command::readCircuits, Menu::file, "read_circuits", "", std::nullopt, true},
    {Command::writeCircuits, Menu::file, "write_circuits", "", std::nullopt},
    {Command::keepTemplate, Menu::file, "keep_template", "", std::nullopt, true},
    {Command::ownLists, Menu::file, "own_lists", "", std::nullopt},
    {Command::closeWindow, Menu::file, "close_window", "Ctrl+W", std::nullopt, true},
    {Command::quit, Menu::file, "quit", "Ctrl+Q", std::nullopt},
    {Command::undo, Menu::edit, "undo", "Ctrl+Z", Icon::undo},
    {Command::redo, Menu::edit, "redo", "Ctrl+Shift+Z", Icon::redo},
    {Command::history, Menu::edit, "history", "Ctrl+H", std::nullopt},
    {Command::move, Menu::edit, "move", "", Icon::move, true},
    {Command::sendBack, Menu::edit, "send_back", "", Icon::sendBack},
    {Command::find, Menu::edit, "find", "Ctrl+F", Icon::find, true},
    {Command::facts, Menu::edit, "facts", "Ctrl+I", Icon::pen},
    {Command::working, Menu::edit, "working", "", Icon::working},
    {Command::add, Menu::edit, "add", "Ctrl+Shift+A", Icon::add, true},
    {Command::fromCatalogue, Menu::edit, "from_catalogue", "Ctrl+L", Icon::list},
    {Command::copy, Menu::edit, "duplicate", "Ctrl+Shift+D", std::nullopt},
    {Command::remove, Menu::edit, "delete", "Ctrl+Del", Icon::remove},
    {Command::copyCircuits, Menu::edit, "copy_circuits", "Ctrl+C", std::nullopt, true},
    {Command::pasteCircuits, Menu::edit, "paste_circuits", "Ctrl+V", std::nullopt},
    {Command::copyPicture, Menu::edit, "copy_picture", "Ctrl+Shift+C", std::nullopt},
    {Command::copyCells, Menu::edit, "copy_cells", "Ctrl+C", std::nullopt, true},
    {Command::pasteCells, Menu::edit, "paste_cells", "Ctrl+V", std::nullopt},
    {Command::fillDown, Menu::edit, "fill_down", "Ctrl+D", std::nullopt},
    {Command::pasteDirectory, Menu::edit, "paste_directory", "Ctrl+Shift+V", Icon::list},
    {Command::twoPole, Menu::edit, "two_pole", "F6", std::nullopt, true},
    {Command::tandem, Menu::edit, "tandem", "F7", std::nullopt},
    {Command::sharedNeutral, Menu::edit, "shared_neutral", "F8", std::nullopt},
    {Command::gradeUnknown, Menu::edit, "grade_unknown", "Alt+1", std::nullopt, true},
    {Command::gradeTypical, Menu::edit, "grade_typical", "Alt+2", std::nullopt},
    {Command::gradeNameplate, Menu::edit, "grade_nameplate", "Alt+3", std::nullopt},
    {Command::gradeTraced, Menu::edit, "grade_traced", "Alt+4", std::nullopt},
    {Command::gradeMeasured, Menu::edit, "grade_measured", "Alt+5", std::nullopt},
    {Command::settings, Menu::edit, "settings", "Ctrl+,", Icon::settings, true},
    {Command::boards, Menu::view, "boards", "Ctrl+1", std::nullopt, false, true},
    {Command::survey, Menu::view, "survey", "Ctrl+2", std::nullopt, false, true},
    {Command::paper, Menu::view, "paper", "Ctrl+4", std::nullopt, false, true},
    {Command::answers, Menu::view, "answers", "Ctrl+5", std::nullopt, true, true},
    {Command::inspector, Menu::view, "inspector", "Ctrl+6", std::nullopt, false, true},
    {Command::catalogue, Menu::view, "catalogue", "Ctrl+7", std::nullopt, false, true},
    {Command::onSite, Menu::view, "on_site", "Ctrl+8", std::nullopt, false, true},
    {Command::desktop, Menu::view, "theme_desktop", "", std::nullopt, true, true},
    {Command::light, Menu::view, "theme_light", "", std::nullopt, false, true},
    {Command::dark, Menu::view, "theme_dark", "", std::nullopt, false, true},
    {Command::contrast, Menu::view, "theme_contrast", "", std::nullopt, false, true},
    {Command::lessMotion, Menu::view, "less_motion", "", std::nullopt, true, true},
    {Command::keys, Menu::help, "keys", "F1", std::nullopt},
    {Command::cautions, Menu::help, "cautions", "", std::nullopt},
    {Command::about, Menu::help, "about", "", std::nullopt, true},
};

constexpr std::array<MessageId, 4> kMenus = {MessageId{"shell.menu.file"}, MessageId{"shell.menu.edit"},
                                             MessageId{"shell.menu.view"}, MessageId{"shell.menu.help"}};
constexpr MessageId kRecent{"shell.menu.recent"};
constexpr MessageId kTemplates{"shell.menu.templates"};
constexpr MessageId kWindows{"shell.menu.windows"};

}  // namespace

std::span<const CommandRow> commands() { return kCommands; }

Actions::Actions(QWidget* owner, const Language& language, const Palette& palette) {
  for (const CommandRow& row : kCommands) {
    const std::string key = std::string("shell.action.") + row.name;
    const std::string tip = key + ".tip";
    auto* action = new QAction(words(language, MessageId{key}), owner);
    action->setObjectName(QString::fromLatin1(row.name));
    action->setStatusTip(words(language, MessageId{tip}));
    action->setToolTip(words(language, MessageId{tip}));
    action->setCheckable(row.choice);
    if (*row.keys != '\0')
      action->setShortcut(
          QKeySequence::fromString(QString::fromLatin1(row.keys), QKeySequence::PortableText));
    owner->addAction(action);
    actions_[row.command] = action;
  }
  const auto group = [&](std::initializer_list<Command> members) {
    auto* made = new QActionGroup(owner);
    for (const Command member : members) made->addAction(actions_.at(member));
  };
  group({Command::boards, Command::survey, Command::paper});
  group({Command::answers, Command::inspector, Command::catalogue, Command::onSite});
  group({Command::desktop, Command::light, Command::dark, Command::contrast});
  setColors(palette);
}

void Actions::setColors(const Palette& palette) const {
  for (const CommandRow& row : kCommands) {
    if (row.icon) actions_.at(row.command)->setIcon(buttonIcon(*row.icon, palette));
  }
}

void Actions::fill(QMenuBar* bar, QMenu* templates, QMenu* recent, QMenu* windows,
                   const Language& language) const {
  std::array<QMenu*, 4> menus{};
  windows->setTitle(words(language, kWindows));
  for (std::size_t i = 0; i < kMenus.size(); ++i) {
    if (i + 1 == kMenus.size()) bar->addMenu(windows);
    menus[i] = bar->addMenu(words(language, kMenus[i]));
  }
  recent->setTitle(words(language, kRecent));
  templates->setTitle(words(language, kTemplates));
  for (const CommandRow& row : kCommands) {
    QMenu* menu = menus[static_cast<std::size_t>(row.menu)];
    if (row.separatorBefore) menu->addSeparator();
    menu->addAction(actions_.at(row.command));
    if (row.command == Command::newPlan) menu->addMenu(templates);
    if (row.command == Command::openElsewhere) menu->addMenu(recent);
  }
}

}  // namespace stayalight
