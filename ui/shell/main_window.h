#pragma once

// The one window: boards and paper as places, answers or facts at the right, the outage strip and the
// findings below. Every change goes through core's edit functions into the document, one undo step each;
// after it the plan is assessed once and every view gets that assessment.

#include <QtCore/QPointer>
#include <QtWidgets/QMainWindow>
#include <memory>
#include <optional>

#include "ui/answers/answers_text.h"
#include "ui/boards/boards_view.h"
#include "ui/document/plan_document.h"
#include "ui/inspector/inspector.h"
#include "ui/settings/settings.h"
#include "ui/shell/actions.h"
#include "ui/wording/language.h"

class QLabel;
class QMenu;
class QSplitter;
class QStackedWidget;
class QTimer;
class QToolButton;

namespace stayalight {

class AnswersColumn;
class CataloguePanel;
class EffectCard;
class FeederLine;
class FindingsList;
class FoundList;
class OnSiteList;
class OutageStrip;
class PaperView;
class SearchBar;
class StartPage;
class SurveyView;
class WorkingWindow;
struct Found;

class MainWindow : public QMainWindow {
  Q_OBJECT
 public:
  explicit MainWindow(QWidget* parent = nullptr);
  ~MainWindow() override;

  /// Opens a plan file after asking about unsaved changes; false where nothing was opened.
  bool openFile(const QString& path);
  /// Another window of the program, beside this one, with nothing open. It deletes itself when it is closed.
  MainWindow* newWindow();
  /// All windows of the program, oldest first.
  [[nodiscard]] static std::vector<MainWindow*> windows();
  /// Asks in each window about its changes, then closes all; false where one answer was to stay.
  static bool closeAll();
  /// The built-in sample as a plan without a file.
  void openSample();
  void startPlan(const Plan& plan);
  /// Offers what was left by a session that ended without saving.
  void offerAutosaves();

  [[nodiscard]] PlanDocument& document() { return *document_; }
  [[nodiscard]] const Assessment& assessment() const { return assessment_; }
  [[nodiscard]] BoardsView* boards() const { return boards_; }
  [[nodiscard]] Inspector* inspector() const { return inspector_; }
  [[nodiscard]] AnswersColumn* answers() const { return answers_; }
  [[nodiscard]] CataloguePanel* catalogue() const { return catalogue_; }
  [[nodiscard]] FindingsList* findings() const { return findings_; }
  [[nodiscard]] OnSiteList* onSite() const { return onSite_; }
  [[nodiscard]] OutageStrip* strip() const { return strip_; }
  [[nodiscard]] PaperView* paper() const { return paper_; }
  [[nodiscard]] SurveyView* survey() const { return survey_; }
  [[nodiscard]] StartPage* startPage() const { return start_; }
  [[nodiscard]] EffectCard* card() const { return card_; }
  [[nodiscard]] SearchBar* searchBar() const { return search_; }
  [[nodiscard]] FoundList* foundList() const { return found_; }
  [[nodiscard]] QAction* action(Command command) const { return actions_[command]; }
  [[nodiscard]] QString statusText() const;
  void setTheme(std::optional<Theme> theme);  ///< none: as the desktop has it
  /// Says once what the settings file held that is no setting.
  void tellSettingsProblems();

 protected:
  void closeEvent(QCloseEvent* event) override;
  void dragEnterEvent(QDragEnterEvent* event) override;
  void dropEvent(QDropEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;
  bool focusNextPrevChild(bool next) override;

 private:
  // main_window.cpp: what stands where
  void buildHeader();
  void buildPages();
  void buildStatus();
  void connectViews();
  void connectActions();
  void showPlace(Command place);
  void showSide(Command side);
  void enableForPlace();
  [[nodiscard]] bool inSurvey() const;
  void restorePlaces();
  void applySettings();
  void restoreChosen();
  void keepPlaces();
  void applyPalette();
  [[nodiscard]] FormStyle formStyle() const;

  // main_window_edit.cpp: changes, and what they change on the screen
  void edit(Result<Plan> after, const Message& name, const QString& mergeWith = {});
  void stepBack();   ///< undo, said in the status line
  void stepForth();  ///< redo
  void showHistory();
  void refuse(const Message& why);
  void planChanged();
  void showFileState();
  void showAll(const Plan& plan, const Assessment& assessment);
  void showSelection();
  void showPending(const std::optional<BoardMove>& move);
  void say(const QString& text, bool wrong = false);
  void saySelection();  ///< in the status line
  void showHints();
  void moveSelection();
  void sendSelectionBack();
  void copySelection();
  void removeSelection();
  /// Another edition is asked for first, with what it changes; false where the present one is kept.
  bool takesEdition(const Plan& after);
  void copyPicture();
  void applyFindingFix(const Finding& finding);
  void jumpTo(const Finding& finding);
  void goToFact(const OnSiteItem& item);
  void openWorking(const WorkingTarget& target);
  void workingOf(BreakerId breaker);
  void contextMenu(EntityRef breaker, QPoint global);
  [[nodiscard]] std::vector<BreakerId> selectedBreakers() const;
  [[nodiscard]] std::vector<CircuitId> selectedCircuits() const;

  // main_window_search.cpp: one field over the boards
  void connectSearch();
  void openSearch();
  void closeSearch();  ///< where nothing was chosen all is as before
  void showNoSideChosen();
  void showFound();
  void goTo(const Found& found);
  struct SearchOrigin {
    Command place = Command::boards;
    Command side = Command::answers;
    QPointer<QWidget> focus;
    std::vector<BreakerId> selected;
  };

  // main_window_files.cpp: files
  bool mayLeave();
  bool mayDropUnread();
  void chooseFile(bool elsewhere);
  void openRecent(const QString& path);
  void fillWindows();
  void comeForward();
  [[nodiscard]] QString planName() const;
  bool read(const QString& path);  ///< into this window, whatever was open in it
  bool save();
  bool saveAs();
  bool saveTo(const QString& path);
  void showError(const Message& why);
  void showTitle();
  void askReload();
  void fillRecent();
  void showPlan();
  void readCircuitsFile();
  void writeCircuitsFile();

  // main_window_lists.cpp: the catalogue, the person's own lists, templates and the clipboard
  void connectLists();
  void addLoadTo(const Circuit& circuit, const Load& load);
  void holdLoad(const QMimeData* carried, std::optional<BreakerId> breaker);
  void showTarget();
  void searchCatalogue();
  void offerToKeep(const EntityRef& record, QPoint global);
  void keep(const EntityRef& record);
  void offerOwn(const EntityRef& record, QPoint global);
  [[nodiscard]] QMenu* listMenu(const QString& name);
  void showKept();
  void keepAsTemplate();
  void showOwnLists();
  void fillTemplates();
  void copyCircuits();
  void pasteCircuits();
  [[nodiscard]] PanelId panelInHand() const;  ///< where a paste goes

  // help_pages.cpp
  void showSettings();
  void showKeys();
  void showCautions();
  void showAbout();

  ProgramLanguage language_;
  Palette palette_;
  Settings shownSettings_;
  PlanDocument* document_;
  Assessment assessment_;
  Actions actions_;
  QMenu* templates_;
  QMenu* recent_;
  QMenu* windows_;
  QStackedWidget* pages_ = nullptr;
  QStackedWidget* places_ = nullptr;
  QStackedWidget* left_ = nullptr;  ///< boards or survey, beside the same right column
  QStackedWidget* side_ = nullptr;
  QSplitter* rows_ = nullptr;
  QSplitter* upper_ = nullptr;
  QSplitter* lower_ = nullptr;
  QWidget* header_ = nullptr;
  QWidget* tools_ = nullptr;
  QLabel* undoText_ = nullptr;
  QLabel* status_ = nullptr;
  QLabel* hints_ = nullptr;
  QLabel* edition_ = nullptr;
  BoardsView* boards_ = nullptr;
  EffectCard* card_ = nullptr;
  FeederLine* feeder_ = nullptr;
  AnswersColumn* answers_ = nullptr;
  Inspector* inspector_ = nullptr;
  CataloguePanel* catalogue_ = nullptr;
  OnSiteList* onSite_ = nullptr;
  std::optional<BreakerId> held_;  ///< that a load from outside is held over
  QLabel* sideSummary_ = nullptr;
  OutageStrip* strip_ = nullptr;
  FindingsList* findings_ = nullptr;
  PaperView* paper_ = nullptr;
  StartPage* start_ = nullptr;
  SurveyView* survey_ = nullptr;
  SearchBar* search_ = nullptr;
  FoundList* found_ = nullptr;
  std::optional<SearchOrigin> beforeSearch_;  ///< none once something was chosen
  QList<int> rowsBeforeSearch_;
  QTimer* surveyLook_ = nullptr;  ///< the facts follow the keyboard once it rests
  int number_ = 0;                ///< in the order in which windows were made
  bool open_ = false;
  bool asked_ = false;     ///< closing: the question was answered
  bool restored_ = false;  ///< the first plan comes up at the place that was left
};

}  // namespace stayalight
