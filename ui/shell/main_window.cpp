#include "ui/shell/main_window.h"

#include <QtCore/QSettings>
#include <QtCore/QTimer>
#include <QtGui/QAction>
#include <QtGui/QGuiApplication>
#include <QtGui/QScreen>
#include <QtWidgets/QApplication>
#include <QtWidgets/QHBoxLayout>
#include <QtWidgets/QLabel>
#include <QtWidgets/QMenu>
#include <QtWidgets/QMenuBar>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QSplitter>
#include <QtWidgets/QStackedWidget>
#include <QtWidgets/QStyle>
#include <QtWidgets/QToolBar>
#include <QtWidgets/QToolButton>
#include <QtWidgets/QVBoxLayout>

#include "ui/answers/answers_column.h"
#include "ui/catalogue/catalogue_panel.h"
#include "ui/findings/findings_list.h"
#include "ui/onsite/on_site_list.h"
#include "ui/paper/paper_view.h"
#include "ui/search/found_list.h"
#include "ui/search/search_bar.h"
#include "ui/settings/settings.h"
#include "ui/shell/effect_card.h"
#include "ui/shell/feeder_line.h"
#include "ui/shell/reading_order.h"
#include "ui/shell/start_page.h"
#include "ui/strip/outage_strip.h"
#include "ui/style/application.h"
#include "ui/survey/survey_table.h"
#include "ui/survey/survey_view.h"
#include "ui/waiting/beside.h"

namespace stayalight {
namespace {

constexpr MessageId kPlaceBoards{"shell.place.boards"};
constexpr MessageId kPlaceSurvey{"shell.place.survey"};
constexpr MessageId kPlacePaper{"shell.place.paper"};
constexpr MessageId kSideAnswers{"shell.side.answers"};
constexpr MessageId kSideFacts{"shell.side.facts"};
constexpr MessageId kSideCatalogue{"shell.side.catalogue"};
constexpr MessageId kSideOnSite{"shell.side.on_site"};
constexpr MessageId kPrint{"shell.print"};
constexpr int kOuter = 12;
constexpr int kRightWidth = 372;
constexpr int kNarrowRightWidth = 346;  // the widest form fits
constexpr int kNarrow = 1360;
constexpr int kSettingsLater = 100;  // milliseconds

Theme desktopTheme() {
  // Asked once, before the program's own palette stands.
  static const Theme theme = themeOfDesktop(QGuiApplication::palette());
  return theme;
}

/// A rounded sheet that views stand on.
class SheetFrame final : public QFrame {
 public:
  explicit SheetFrame(QWidget* parent) : QFrame(parent) {
    setObjectName(QStringLiteral("sheet"));
    setFrameShape(QFrame::StyledPanel);
    setAutoFillBackground(true);
  }
};

}  // namespace

MainWindow::MainWindow(QWidget* parent)
    : QMainWindow(parent),
      palette_(desktopTheme()),
      document_(new PlanDocument(this)),
      actions_(this, language_, palette_),
      templates_(new QMenu(this)),
      recent_(new QMenu(this)),
      windows_(new QMenu(this)) {
  setObjectName(QStringLiteral("mainWindow"));
  static int made = 0;
  number_ = ++made;
  setAcceptDrops(true);
  setWindowIcon(programIcon());
  setMinimumSize(960, 600);
  // Before any widget is made: each would have to be polished anew.
  UserSettings::instance().read();
  applySettings();
  applyStyle(*qApp, palette_);
  buildHeader();
  buildPages();
  buildStatus();
  connectViews();
  connectActions();
  connectLists();
  connectSearch();
  restorePlaces();
  applyPalette();
  fillRecent();
  showPlace(Command::boards);
  showSide(Command::answers);
  planChanged();
  showTitle();
}

MainWindow::~MainWindow() {
  // The document outlives no view that listens to it, and no view outlives the language and the palette it
  // draws with: a window that is closed by its end still gives the focus away, and the boards lay themselves
  // out anew.
  document_->disconnect(this);
  hide();
  delete takeCentralWidget();
}

FormStyle MainWindow::formStyle() const {
  FormStyle style;
  style.language = &language_;
  style.palette = palette_;
  style.units.metric = UserSettings::instance().now().metric;
  return style;
}

void MainWindow::buildHeader() {
  header_ = new QWidget(this);
  header_->setObjectName(QStringLiteral("header"));
  header_->setAutoFillBackground(true);
  auto* row = new QHBoxLayout(header_);
  row->setContentsMargins(4, 4, kOuter, 4);
  row->setSpacing(6);
  auto* bar = new QMenuBar(header_);
  bar->setNativeMenuBar(false);
  bar->setSizePolicy(QSizePolicy::Minimum, QSizePolicy::Fixed);
  actions_.fill(bar, templates_, recent_, windows_, language_);
  connect(recent_, &QMenu::aboutToShow, this, [this] { fillRecent(); });
  connect(windows_, &QMenu::aboutToShow, this, [this] { fillWindows(); });
  row->addWidget(bar, 0, Qt::AlignVCenter);
  tools_ = new QWidget(header_);
  auto* tools = new QHBoxLayout(tools_);
  tools->setContentsMargins(0, 0, 0, 0);
  tools->setSpacing(6);
  const auto tool = [&](Command command, const QString& name) {
    auto* button = new QToolButton(tools_);
    button->setObjectName(name);
    button->setDefaultAction(actions_[command]);
    button->setAutoRaise(true);
    tools->addWidget(button);
    return button;
  };
  tool(Command::undo, QStringLiteral("undoButton"))->setToolButtonStyle(Qt::ToolButtonIconOnly);
  tool(Command::redo, QStringLiteral("redoButton"))->setToolButtonStyle(Qt::ToolButtonIconOnly);
  undoText_ = new QLabel(tools_);
  undoText_->setObjectName(QStringLiteral("undoText"));
  undoText_->setFont(screenFont(Face::condensed, 12));
  undoText_->setMinimumWidth(40);
  undoText_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  tools->addWidget(undoText_, 1);
  const auto place = [&](Command command, MessageId text, const QString& name) {
    QToolButton* button = tool(command, name);
    button->setToolButtonStyle(Qt::ToolButtonTextOnly);
    button->setText(words(language_, text));
    button->setFont(screenFont(Face::condensed, 13, Weight::medium));
    button->setMinimumSize(scaled(72), scaled(28));
  };
  place(Command::boards, kPlaceBoards, QStringLiteral("placeBoards"));
  place(Command::survey, kPlaceSurvey, QStringLiteral("placeSurvey"));
  place(Command::paper, kPlacePaper, QStringLiteral("placePaper"));
  auto* space = new QWidget(tools_);
  space->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Preferred);
  tools->addWidget(space, 1);
  QToolButton* print = tool(Command::print, QStringLiteral("printButton"));
  print->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
  print->setText(words(language_, kPrint));
  print->setAutoRaise(false);
  row->addWidget(tools_, 1);
  setMenuWidget(header_);
}

void MainWindow::buildPages() {
  pages_ = new QStackedWidget(this);
  setCentralWidget(pages_);
  start_ = new StartPage(formStyle(), pages_);
  pages_->addWidget(start_);
  places_ = new QStackedWidget(pages_);
  pages_->addWidget(places_);

  auto* boardsPlace = new QWidget(places_);
  auto* outer = new QVBoxLayout(boardsPlace);
  outer->setContentsMargins(kOuter, 8, kOuter, 4);
  rows_ = new QSplitter(Qt::Vertical, boardsPlace);
  rows_->setObjectName(QStringLiteral("rows"));
  rows_->setHandleWidth(10);
  rows_->setChildrenCollapsible(false);
  outer->addWidget(rows_);
  upper_ = new QSplitter(Qt::Horizontal, rows_);
  lower_ = new QSplitter(Qt::Horizontal, rows_);
  for (QSplitter* splitter : {upper_, lower_}) {
    splitter->setHandleWidth(14);
    splitter->setChildrenCollapsible(false);
  }

  left_ = new QStackedWidget(upper_);
  auto* boardsSide = new QWidget(left_);
  auto* boardsColumn = new QVBoxLayout(boardsSide);
  boardsColumn->setContentsMargins(0, 0, 0, 0);
  boardsColumn->setSpacing(0);
  found_ = new FoundList(this);
  search_ = new SearchBar(found_, boardsSide);
  search_->setObjectName(QStringLiteral("searchBar"));
  search_->hide();
  boardsColumn->addWidget(search_);
  boards_ = new BoardsView(boardsSide);
  boards_->setObjectName(QStringLiteral("boards"));
  boards_->setLanguage(&language_);
  auto* under = new QWidget;
  auto* underColumn = new QVBoxLayout(under);
  underColumn->setContentsMargins(0, 0, 0, 0);
  underColumn->setSpacing(8);
  card_ = new EffectCard(under);
  card_->setObjectName(QStringLiteral("effectCard"));
  feeder_ = new FeederLine(under);
  feeder_->setObjectName(QStringLiteral("feederLine"));
  underColumn->addWidget(card_, 4);
  underColumn->addWidget(feeder_, 3);
  underColumn->addStretch(0);
  boards_->setUnderBackup(under);
  boardsColumn->addWidget(boards_, 1);
  left_->addWidget(boardsSide);
  auto* surveySheet = new SheetFrame(left_);
  auto* surveyColumn = new QVBoxLayout(surveySheet);
  surveyColumn->setContentsMargins(0, 0, 0, 0);
  survey_ = new SurveyView(surveySheet);
  survey_->setObjectName(QStringLiteral("survey"));
  surveyColumn->addWidget(survey_);
  left_->addWidget(surveySheet);
  surveyLook_ = new QTimer(this);
  surveyLook_->setSingleShot(true);
  surveyLook_->setInterval(150);
  upper_->addWidget(left_);

  auto* right = new SheetFrame(upper_);
  auto* rightColumn = new QVBoxLayout(right);
  rightColumn->setContentsMargins(0, 6, 0, 0);
  rightColumn->setSpacing(2);
  auto* tabs = new QHBoxLayout;
  tabs->setContentsMargins(kOuter, 0, kOuter, 0);
  tabs->setSpacing(4);
  const auto sideButton = [&](Command command, MessageId text, const QString& name) {
    auto* button = new QToolButton(right);
    button->setObjectName(name);
    button->setDefaultAction(actions_[command]);
    button->setText(words(language_, text));
    button->setToolButtonStyle(Qt::ToolButtonTextOnly);
    button->setAutoRaise(true);
    button->setFont(screenFont(Face::condensed, 12, Weight::medium));
    tabs->addWidget(button);
  };
  sideButton(Command::answers, kSideAnswers, QStringLiteral("sideAnswers"));
  sideButton(Command::inspector, kSideFacts, QStringLiteral("sideFacts"));
  sideButton(Command::catalogue, kSideCatalogue, QStringLiteral("sideCatalogue"));
  sideButton(Command::onSite, kSideOnSite, QStringLiteral("sideOnSite"));
  tabs->addStretch(1);
  rightColumn->addLayout(tabs);
  side_ = new QStackedWidget(right);
  answers_ = new AnswersColumn(side_);
  answers_->setObjectName(QStringLiteral("answers"));
  side_->addWidget(answers_);
  auto* facts = new QWidget(side_);
  auto* factsColumn = new QVBoxLayout(facts);
  factsColumn->setContentsMargins(0, 4, 0, 0);
  factsColumn->setSpacing(6);
  // While facts are typed the answer stays in sight.
  sideSummary_ = new QLabel(facts);
  sideSummary_->setObjectName(QStringLiteral("sideSummary"));
  sideSummary_->setFont(screenFont(Face::condensed, 12, Weight::medium));
  sideSummary_->setWordWrap(true);
  sideSummary_->setContentsMargins(kOuter, 0, kOuter, 0);
  factsColumn->addWidget(sideSummary_);
  inspector_ = new Inspector(formStyle(), facts);
  inspector_->setObjectName(QStringLiteral("inspector"));
  factsColumn->addWidget(inspector_, 1);
  side_->addWidget(facts);
  catalogue_ = new CataloguePanel(formStyle(), side_);
  catalogue_->setObjectName(QStringLiteral("catalogue"));
  side_->addWidget(catalogue_);
  onSite_ = new OnSiteList(side_);
  onSite_->setObjectName(QStringLiteral("onSite"));
  side_->addWidget(onSite_);
  found_->setObjectName(QStringLiteral("foundList"));
  side_->addWidget(found_);
  rightColumn->addWidget(side_, 1);
  upper_->addWidget(right);

  auto* stripSheet = new SheetFrame(lower_);
  auto* stripColumn = new QVBoxLayout(stripSheet);
  stripColumn->setContentsMargins(0, 0, 0, 0);
  strip_ = new OutageStrip(stripSheet);
  strip_->setObjectName(QStringLiteral("outageStrip"));
  stripColumn->addWidget(strip_);
  lower_->addWidget(stripSheet);
  auto* findingsSheet = new SheetFrame(lower_);
  auto* findingsColumn = new QVBoxLayout(findingsSheet);
  findingsColumn->setContentsMargins(0, 0, 0, 0);
  findings_ = new FindingsList(findingsSheet);
  findings_->setObjectName(QStringLiteral("findings"));
  findingsColumn->addWidget(findings_);
  lower_->addWidget(findingsSheet);
  for (QSplitter* splitter : {upper_, lower_}) {
    splitter->setStretchFactor(0, 1);
    splitter->setStretchFactor(1, 0);
    splitter->widget(1)->setMinimumWidth(270);
  }
  rows_->setStretchFactor(0, 7);
  rows_->setStretchFactor(1, 3);
  // One edge for both rows: the lower row follows the upper one, whatever moves it.
  upper_->widget(1)->installEventFilter(this);
  connect(lower_, &QSplitter::splitterMoved, this, [this] { upper_->setSizes(lower_->sizes()); });
  places_->addWidget(boardsPlace);

  paper_ = new PaperView(language_, places_);
  paper_->setObjectName(QStringLiteral("paper"));
  places_->addWidget(paper_);
}

void MainWindow::buildStatus() {
  auto* bar = new QWidget(this);
  bar->setObjectName(QStringLiteral("statusLine"));
  auto* row = new QHBoxLayout(bar);
  row->setContentsMargins(14, 2, 14, 4);
  row->setSpacing(16);
  status_ = new QLabel(bar);
  status_->setObjectName(QStringLiteral("statusMessage"));
  status_->setFont(screenFont(Face::condensed, 12, Weight::medium));
  status_->setTextFormat(Qt::PlainText);
  hints_ = new QLabel(bar);
  hints_->setFont(screenFont(Face::condensed, 11.5));
  hints_->setTextFormat(Qt::PlainText);
  edition_ = new QLabel(bar);
  edition_->setObjectName(QStringLiteral("edition"));
  edition_->setFont(screenFont(Face::condensed, 11.5));
  hints_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  row->addWidget(status_);
  row->addWidget(hints_, 1);
  row->addWidget(edition_);
  auto* under = new QToolBar(this);
  under->setObjectName(QStringLiteral("statusBar"));
  under->setMovable(false);
  under->setFloatable(false);
  under->setContextMenuPolicy(Qt::PreventContextMenu);
  under->toggleViewAction()->setVisible(false);
  bar->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Preferred);
  under->addWidget(bar);
  addToolBar(Qt::BottomToolBarArea, under);
}

bool MainWindow::eventFilter(QObject* watched, QEvent* event) {
  if (watched == upper_->widget(1) && event->type() == QEvent::Resize) lower_->setSizes(upper_->sizes());
  return QMainWindow::eventFilter(watched, event);
}

// Forms, rows and figures come and go: the order is found when it is asked for.
bool MainWindow::focusNextPrevChild(bool next) {
  return focusNeighbour(*this, next) || QMainWindow::focusNextPrevChild(next);
}

bool MainWindow::inSurvey() const { return places_->currentIndex() == 0 && left_->currentIndex() == 1; }

void MainWindow::showPlace(Command place) {
  if (inSurvey()) survey_->finishTyping();
  const bool survey = place == Command::survey;
  places_->setCurrentIndex(place == Command::paper ? 1 : 0);
  left_->setCurrentIndex(survey ? 1 : 0);
  lower_->setVisible(!survey);
  actions_[place]->setChecked(true);
  enableForPlace();
  showHints();
}

void MainWindow::enableForPlace() {
  for (const Command command :
       {Command::copyCells, Command::pasteCells, Command::fillDown, Command::pasteDirectory, Command::twoPole,
        Command::tandem, Command::sharedNeutral, Command::gradeUnknown, Command::gradeTypical,
        Command::gradeNameplate, Command::gradeTraced, Command::gradeMeasured}) {
    actions_[command]->setEnabled(open_ && inSurvey());
  }
  // The same keys copy cells there and circuits here.
  const bool onBoards = places_->currentIndex() == 0 && !inSurvey();
  for (const Command command : {Command::copyCircuits, Command::pasteCircuits})
    actions_[command]->setEnabled(open_ && onBoards);
}

void MainWindow::showSide(Command side) {
  side_->setCurrentIndex(side == Command::inspector   ? 1
                         : side == Command::catalogue ? 2
                         : side == Command::onSite    ? 3
                                                      : 0);
  actions_[side]->setChecked(true);
}

namespace {

// Where windows stand is kept for each arrangement of screens by itself.
QString screenSetup() {
  QStringList screens;
  for (const QScreen* screen : QGuiApplication::screens()) {
    const QRect at = screen->geometry();
    screens << QStringLiteral("%1x%2+%3+%4@%5")
                   .arg(at.width())
                   .arg(at.height())
                   .arg(at.x())
                   .arg(at.y())
                   .arg(screen->devicePixelRatio());
  }
  screens.sort();
  return QStringLiteral("window/") + screens.join(QLatin1Char(','));
}

constexpr std::array kPlaces = {std::pair(Command::boards, "boards"), std::pair(Command::survey, "survey"),
                                std::pair(Command::paper, "paper")};
constexpr std::array kSides = {std::pair(Command::answers, "answers"), std::pair(Command::inspector, "facts"),
                               std::pair(Command::onSite, "on_site")};

}  // namespace

void MainWindow::restorePlaces() {
  QSettings settings;
  settings.beginGroup(screenSetup());
  const QByteArray geometry = settings.value(QStringLiteral("geometry")).toByteArray();
  if (geometry.isEmpty() || !restoreGeometry(geometry)) {
    const QSize room = screen() != nullptr ? screen()->availableSize() : QSize(1440, 900);
    resize(QSize(1440, 900).boundedTo(room));
  }
  if (!rows_->restoreState(settings.value(QStringLiteral("rows")).toByteArray())) {
    rows_->setSizes({height() * 62 / 100, height() * 30 / 100});
  }
  const QByteArray columns = settings.value(QStringLiteral("columns")).toByteArray();
  if (!upper_->restoreState(columns)) {
    const int right = width() < kNarrow ? kNarrowRightWidth : kRightWidth;
    upper_->setSizes({width() - right - 2 * kOuter, right});
  }
  lower_->setSizes(upper_->sizes());
}

void MainWindow::restoreChosen() {
  restored_ = true;
  QSettings settings;
  settings.beginGroup(screenSetup());
  const QString place = settings.value(QStringLiteral("place")).toString();
  const QString side = settings.value(QStringLiteral("side")).toString();
  for (const auto& [command, word] : kPlaces) {
    if (place == QLatin1String(word)) showPlace(command);
  }
  for (const auto& [command, word] : kSides) {
    if (side == QLatin1String(word)) showSide(command);
  }
}

void MainWindow::keepPlaces() {
  closeSearch();
  QSettings settings;
  settings.beginGroup(screenSetup());
  settings.setValue(QStringLiteral("geometry"), saveGeometry());
  if (!open_) return;
  settings.setValue(QStringLiteral("rows"), rows_->saveState());
  settings.setValue(QStringLiteral("columns"), upper_->saveState());
  for (const auto& [command, word] : kPlaces) {
    if (actions_[command]->isChecked()) settings.setValue(QStringLiteral("place"), QLatin1String(word));
  }
  for (const auto& [command, word] : kSides) {
    if (actions_[command]->isChecked()) settings.setValue(QStringLiteral("side"), QLatin1String(word));
  }
}

void MainWindow::setTheme(std::optional<Theme> theme) {
  Settings next = UserSettings::instance().now();
  next.theme = theme;
  UserSettings::instance().set(next);
}

void MainWindow::applySettings() {
  // What works beside this window reads its language.
  if (worksBeside(this)) return QTimer::singleShot(kSettingsLater, this, [this] { applySettings(); });
  const Settings& settings = UserSettings::instance().now();
  const bool comma =
      settings.decimalMark == DecimalMark::comma ||
      (settings.decimalMark == DecimalMark::system && QLocale::system().decimalPoint() == QLatin1String(","));
  language_.setUnits(settings.metric ? UnitSystem::metric : UnitSystem::us);
  language_.setNumberForm(comma ? NumberForm::comma : NumberForm::point);
  document_->setAutosaveDelay(settings.autosaveSeconds * 1000);
  const Settings before = std::exchange(shownSettings_, settings);
  palette_ = Palette(settings.theme.value_or(desktopTheme()));
  if (boards_ == nullptr) return;  // the window is still being made
  actions_[Command::lessMotion]->setChecked(settings.lessMotion);
  const bool colors = settings.theme != before.theme;
  if (!colors && settings.metric == before.metric && settings.decimalMark == before.decimalMark) return;
  if (boards_->carrying()) boards_->cancel();
  survey_->finishTyping();
  if (colors) applyStyle(*qApp, palette_);
  applyPalette();
  planChanged();
}

void MainWindow::applyPalette() {
  const QPalette widgets = widgetPalette(palette_);
  const auto ground = [&](QWidget* widget, ColorRole role) {
    QPalette colors = widgets;
    colors.setColor(QPalette::Window, palette_.color(role));
    widget->setPalette(colors);
    widget->setAutoFillBackground(true);
  };
  for (QFrame* sheet : findChildren<QFrame*>(QStringLiteral("sheet"))) ground(sheet, ColorRole::sheet);
  ground(header_, ColorRole::sheet);
  actions_.setColors(palette_);
  boards_->setPalette(palette_);
  answers_->setColors(palette_);
  strip_->setColors(palette_);
  findings_->setColors(palette_);
  search_->setTexts(language_);
  search_->setColors(palette_);
  found_->setTexts(language_);
  found_->setColors(palette_);
  onSite_->setColors(palette_);
  survey_->setColors(palette_);
  inspector_->setStyle(formStyle());
  catalogue_->setStyle(formStyle());
  start_->setStyle(formStyle());
  const Settings& settings = UserSettings::instance().now();
  const Command chosen = !settings.theme                   ? Command::desktop
                         : *settings.theme == Theme::light ? Command::light
                         : *settings.theme == Theme::dark  ? Command::dark
                                                           : Command::contrast;
  actions_[chosen]->setChecked(true);
  actions_[Command::lessMotion]->setChecked(settings.lessMotion);
  if (open_) showAll(document_->plan(), assessment_);
  say(status_->text());
}

void MainWindow::connectActions() {
  const auto on = [this](Command command, auto&& what) {
    connect(actions_[command], &QAction::triggered, this, what);
  };
  on(Command::newPlan, [this] {
    if (!mayLeave()) return;
    document_->close();
    open_ = false;
    planChanged();
    showTitle();
    say({});
  });
  on(Command::newWindow, [this] { newWindow(); });
  on(Command::open, [this] { chooseFile(false); });
  on(Command::openElsewhere, [this] { chooseFile(true); });
  on(Command::closeWindow, [this] { close(); });
  on(Command::sample, [this] {
    if (mayLeave()) openSample();
  });
  on(Command::save, [this] { save(); });
  on(Command::saveAs, [this] { saveAs(); });
  on(Command::print, [this] {
    showPlace(Command::paper);
    paper_->printPages();
  });
  on(Command::savePdf, [this] {
    showPlace(Command::paper);
    paper_->savePdf();
  });
  on(Command::quit, [] { closeAll(); });
  on(Command::undo, [this] { stepBack(); });
  on(Command::redo, [this] { stepForth(); });
  on(Command::history, [this] { showHistory(); });
  on(Command::move, [this] { moveSelection(); });
  on(Command::sendBack, [this] { sendSelectionBack(); });
  on(Command::find, [this] { openSearch(); });
  on(Command::facts, [this] {
    showSide(Command::inspector);
    inspector_->focusField({});
  });
  on(Command::working, [this] {
    const auto selected = selectedBreakers();
    if (!selected.empty())
      workingOf(selected.front());
    else
      openWorking(answers_->answers().hours);
  });
  on(Command::add, [this] {
    showSide(Command::inspector);
    if (auto* button = inspector_->findChild<QPushButton*>(QStringLiteral("addNew"))) button->showMenu();
  });
  on(Command::copy, [this] { copySelection(); });
  on(Command::remove, [this] { removeSelection(); });
  on(Command::readCircuits, [this] { readCircuitsFile(); });
  on(Command::writeCircuits, [this] { writeCircuitsFile(); });
  on(Command::copyPicture, [this] { copyPicture(); });
  on(Command::copyCells, [this] { survey_->copyCells(); });
  on(Command::pasteCells, [this] { survey_->pasteCells(); });
  on(Command::fillDown, [this] { survey_->fillDown(); });
  on(Command::pasteDirectory, [this] { survey_->pasteDirectory(); });
  on(Command::twoPole, [this] { survey_->twoPole(); });
  on(Command::tandem, [this] { survey_->tandem(); });
  on(Command::sharedNeutral, [this] { survey_->sharedNeutral(); });
  constexpr std::array kGrades = {Command::gradeUnknown, Command::gradeTypical, Command::gradeNameplate,
                                  Command::gradeTraced, Command::gradeMeasured};
  for (std::size_t i = 0; i < kGrades.size(); ++i)
    on(kGrades[i], [this, i] { survey_->grade(static_cast<Grade>(i)); });
  on(Command::boards, [this] { showPlace(Command::boards); });
  on(Command::paper, [this] { showPlace(Command::paper); });
  on(Command::survey, [this] {
    const std::vector<BreakerId> selected = selectedBreakers();
    showPlace(Command::survey);
    showSide(Command::inspector);
    if (!selected.empty())
      survey_->focusBreaker(selected.front());
    else
      survey_->table()->setFocus();
  });
  for (const Command side : {Command::answers, Command::inspector, Command::catalogue})
    on(side, [this, side] { showSide(side); });
  on(Command::onSite, [this] {
    showSide(Command::onSite);
    onSite_->setFocus();
  });
  on(Command::desktop, [this] { setTheme(std::nullopt); });
  on(Command::light, [this] { setTheme(Theme::light); });
  on(Command::dark, [this] { setTheme(Theme::dark); });
  on(Command::contrast, [this] { setTheme(Theme::contrast); });
  on(Command::lessMotion, [this] {
    Settings next = UserSettings::instance().now();
    next.lessMotion = actions_[Command::lessMotion]->isChecked();
    UserSettings::instance().set(next);
  });
  connect(&UserSettings::instance(), &UserSettings::changed, this, [this] { applySettings(); });
  on(Command::settings, [this] { showSettings(); });
  on(Command::keys, [this] { showKeys(); });
  on(Command::cautions, [this] { showCautions(); });
  on(Command::about, [this] { showAbout(); });
}

}  // namespace stayalight
