#pragma once

// Everything the window can be told to do, in one table: text, explanation, keys, icon, menu.

#include <cstdint>
#include <map>
#include <optional>
#include <span>

#include "core/message/message.h"
#include "ui/style/icons.h"

class QAction;
class QMenu;
class QMenu;
class QMenuBar;
class QWidget;

namespace stayalight {

enum class Command : std::uint8_t {
  newPlan,
  newWindow,
  open,
  openElsewhere,
  sample,
  save,
  saveAs,
  print,
  savePdf,
  readCircuits,
  writeCircuits,
  keepTemplate,
  ownLists,
  closeWindow,
  quit,
  undo,
  redo,
  history,
  move,
  sendBack,
  find,
  facts,
  working,
  add,
  fromCatalogue,
  copy,
  remove,
  copyCircuits,
  pasteCircuits,
  copyPicture,
  copyCells,
  pasteCells,
  fillDown,
  pasteDirectory,
  twoPole,
  tandem,
  sharedNeutral,
  gradeUnknown,
  gradeTypical,
  gradeNameplate,
  gradeTraced,
  gradeMeasured,
  settings,
  boards,
  survey,
  paper,
  answers,
  inspector,
  catalogue,
  onSite,
  light,
  dark,
  contrast,
  desktop,
  lessMotion,
  keys,
  cautions,
  about
};

enum class Menu : std::uint8_t { file, edit, view, help };

struct CommandRow {
  Command command;
  Menu menu;
  const char* name;  ///< key of its texts: "shell.action.<name>" and ".tip"
  const char* keys;  ///< portable text of the shortcut, empty where there is none
  std::optional<Icon> icon;
  bool separatorBefore = false;
  bool choice = false;  ///< can be ticked
};
[[nodiscard]] std::span<const CommandRow> commands();

/// The actions, made from the table as children of `owner`.
class Actions {
 public:
  Actions(QWidget* owner, const Language& language, const Palette& palette);
  [[nodiscard]] QAction* operator[](Command command) const { return actions_.at(command); }
  /// Menus in the order of the table; File gets `templates` after "new" and `recent` after the ways to open,
  /// and the menu of the open windows stands before Help.
  void fill(QMenuBar* bar, QMenu* templates, QMenu* recent, QMenu* windows, const Language& language) const;
  void setColors(const Palette& palette) const;

 private:
  std::map<Command, QAction*> actions_;
};

}  // namespace stayalight
