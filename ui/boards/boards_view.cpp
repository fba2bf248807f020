#include "ui/boards/boards_view.h"

#include <QtGui/QAccessible>
#include <QtGui/QPainter>
#include <QtWidgets/QScrollBar>
#include <algorithm>
#include <cmath>

#include "ui/board/paint.h"
#include "ui/boards/accessible_board.h"
#include "ui/boards/boards_view_parts.h"
#include "ui/style/application.h"
#include "ui/style/motion.h"

namespace stayalight {
namespace {

constexpr MessageId kNoSpaceFree{"board.no_space_free"};
constexpr MessageId kNothingMoves{"board.nothing_moves"};

constexpr double kWideFrom = 1000.0;  // of the view, in layout units: from here on the gap is the wide one
constexpr double kGap = 54.0, kNarrowGap = 38.0;
constexpr double kLeastWidth = 640.0;  // of both boards: names are cut shorter, ratings and spaces are not
constexpr int kUnderGap = 12;
constexpr int kChooserGap = 4;
constexpr int kLabelGap = 8;
constexpr int kSettle = 120, kReturn = 160;  // milliseconds
constexpr int kShadow = 4;                   // room for the carried picture's shadow

QScrollArea* boardArea(QWidget* parent) {
  auto* area = new QScrollArea(parent);
  area->setFrameShape(QFrame::NoFrame);
  area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  area->setFocusPolicy(Qt::NoFocus);
  area->viewport()->setAutoFillBackground(false);
  auto* inside = new QWidget;
  inside->setAutoFillBackground(false);
  area->setWidget(inside);
  return area;
}

}  // namespace

CarriedPicture::CarriedPicture(QWidget* parent) : QWidget(parent) {
  setAttribute(Qt::WA_TransparentForMouseEvents);
  hide();
}

void CarriedPicture::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.scale(scale, scale);
  painter.translate(1.0, 1.0);
  paintCarried(painter, layout, cell, palette);
}

// -- layout
// ------------------------------------------------------------------------------------------------------------

void BoardsView::Parts::arrange() {
  const double scale = systemScale();
  const int width = view.width(), height = view.height();
  const int gapWidth =
      static_cast<int>(std::lround((width / scale >= kWideFrom ? kGap : kNarrowGap) * scale));
  const int boardWidth = std::max(200, (width - gapWidth) / 2);
  int head = 0;
  for (std::size_t side = 0; side < choosers.size(); ++side) {
    QComboBox* chooser = choosers[side];
    QLabel* label = labels[side];
    for (QWidget* each : {static_cast<QWidget*>(chooser), static_cast<QWidget*>(label)})
      each->setVisible(plan.panels.size() > shownPanels.size());
    if (chooser->isHidden()) continue;
    const QSize wanted = chooser->sizeHint();
    const int from = side == 0 ? 0 : width - boardWidth;
    const int labelWidth = label->sizeHint().width() + scaled(kLabelGap);
    label->setGeometry(from, 0, labelWidth, wanted.height());
    chooser->setGeometry(from + labelWidth, 0, std::min(boardWidth - labelWidth, wanted.width()),
                         wanted.height());
    head = wanted.height() + kChooserGap;
  }
  const std::array<QScrollArea*, 2> areas = {left, right};
  std::array<int, 2> rooms = {height - head, height - head};
  if (under != nullptr)
    rooms[1] = std::max(rooms[1] / 3, rooms[1] - kUnderGap - under->minimumSizeHint().height());
  rowHeight = kRowHeight;
  for (std::size_t side = 0; side < areas.size(); ++side)
    rowHeight = std::min(rowHeight, fittedRowHeight(plan, {&shownPanels[side], 1}, rooms[side] / scale));
  for (std::size_t side = 0; side < areas.size(); ++side) {
    const Panel* panel = stayalight::find(plan, shownPanels[side]);
    const bool scrolls = panel != nullptr && boardHeight(*panel, rowHeight) * scale > rooms[side];
    bars[side] = scrolls ? areas[side]->verticalScrollBar()->sizeHint().width() : 0;
  }
  relayout();

  int tall[2] = {0, 0};
  for (BoardWidget* board : boards) {
    board->move(0, 0);
    tall[board->parentWidget() == right->widget() ? 1 : 0] = board->height();
  }
  for (std::size_t side = 0; side < areas.size(); ++side) {
    areas[side]->widget()->resize(boardWidth - bars[side], tall[side]);
    areas[side]->setGeometry(side == 0 ? 0 : width - boardWidth, head, boardWidth,
                             std::min(tall[side], rooms[side]));
  }
  gap = QRect(boardWidth, head, width - 2 * boardWidth, height - head);
  if (under != nullptr) {
    const int top = right->height() > 0 ? head + right->height() + kUnderGap : head;
    under->setGeometry(width - boardWidth, top, boardWidth, std::max(0, height - top));
    under->setVisible(height - top > 40);
  }
  picture->raise();
  view.update();
}

void BoardsView::Parts::relayout() {
  const double scale = systemScale();
  const int width = view.width();
  const int gapWidth =
      static_cast<int>(std::lround((width / scale >= kWideFrom ? kGap : kNarrowGap) * scale));
  BoardOptions options;
  options.rowHeight = rowHeight;
  for (BoardWidget* board : boards) {
    const int bar = bars[board->parentWidget() == right->widget() ? 1 : 0];
    options.width = (std::max(200, (width - gapWidth) / 2) - bar) / scale;
    board->setLayoutOf(
        stayalight::layout(plan, assessment, board->panel(), *language, options, stateFor(*board)), scale);
  }
}

BoardState BoardsView::Parts::stateFor(const BoardWidget& board) const {
  BoardState out;
  if (!carrying.active()) out.hovered = board.hovered();
  if (board.hasFocus() && !carrying.active()) out.focused = board.focusAddress();
  out.selected = selected;
  out.filter = filter;
  if (!carrying.active()) return out;
  out.carried = std::set<BreakerId>(carrying.breakers().begin(), carrying.breakers().end());
  if (const Breaker* first = stayalight::find(plan, carrying.breakers().front())) {
    out.carriedPoles = first->poles;
    out.carriedRating = first->rating;
  }
  const auto note = [&](const CellAddress& address) {
    LandingNote landing;
    if (const auto known = previews.find(address); known != previews.end()) {
      const Panel* panel = stayalight::find(plan, address.panel);
      landing.legal = known->second.legal;
      landing.text =
          words(resultWords(known->second, panel != nullptr && panel->role.is(PanelRole::backup)), *language);
    }
    out.landings[address] = landing;
  };
  for (const CellAddress& address : landings()) {
    if (address.panel == board.panel()) note(address);
  }
  if (carrying.target() && carrying.target()->panel == board.panel()) {
    out.target = carrying.target();
    note(*carrying.target());
  }
  return out;
}

BoardWidget* BoardsView::Parts::boardOf(PanelId panel) const {
  for (BoardWidget* board : boards) {
    if (board->panel() == panel) return board;
  }
  return nullptr;
}

BoardWidget* BoardsView::Parts::boardAt(QPoint global) const {
  for (BoardWidget* board : boards) {
    // Only what its scroll area shows of it.
    if (board->visibleRegion().boundingRect().contains(board->mapFromGlobal(global))) return board;
  }
  return nullptr;
}

// -- selection
// ---------------------------------------------------------------------------------------------------------

void BoardsView::Parts::setSelection(std::set<BreakerId> breakers, bool tell) {
  if (breakers == selected) return;
  selected = std::move(breakers);
  relayout();
  if (tell) tellSelection();
}

void BoardsView::Parts::show(const BoardWidget& board, int cell) {
  QScrollArea* area = board.parentWidget() == right->widget() ? right : left;
  const QRect rect = board.pixels(board.layout().cells[static_cast<std::size_t>(cell)].rect);
  const QPoint centre = board.pos() + rect.center();
  area->ensureVisible(centre.x(), centre.y(), 0, rect.height());
}

std::vector<EntityRef> BoardsView::Parts::refs() const {
  std::vector<EntityRef> out;
  for (const BreakerId breaker : selected) out.push_back({RecordKind::breaker, breaker.number, -1});
  return out;
}

// -- carrying
// ----------------------------------------------------------------------------------------------------------

std::optional<BoardMove> BoardsView::Parts::moveTo(const CellAddress& address) const {
  return moveFor(plan, carrying.breakers(), address.panel, address.position);
}

std::vector<CellAddress> BoardsView::Parts::landings() const {
  std::vector<CellAddress> out;
  for (const BoardWidget* board : boards) {
    for (const BoardCell& cell : board->layout().cells) {
      const bool free = cell.kind == CellKind::free;
      if (!free && cell.kind != CellKind::movedAway) continue;
      const std::optional<BoardMove> move = moveTo(cell.address);
      if (!move) continue;
      // Back home is one space, the one the circuit left; elsewhere every free space will do.
      const bool home =
          std::find(move->circuits.begin(), move->circuits.end(), cell.circuit) != move->circuits.end();
      if (move->kind == MoveKind::sendBack ? (!free && home) : free) out.push_back(cell.address);
    }
  }
  return out;
}

void BoardsView::Parts::take() {
  flight->stop();
  picture->hide();
  previews.clear();
  waiting = landings();
  std::reverse(waiting.begin(), waiting.end());
  work.start();
  if (BoardWidget* board = boardOf(stayalight::find(plan, carrying.breakers().front()) != nullptr
                                       ? stayalight::find(plan, carrying.breakers().front())->panel
                                       : PanelId{})) {
    picture->layout = board->layout();
    picture->cell = board->layout().cellOf(carrying.breakers().front());
    picture->scale = board->scale();
    picture->palette = palette;
    if (picture->cell >= 0) {
      const QRectF rect = picture->layout.cells[static_cast<std::size_t>(picture->cell)].rect;
      picture->resize((rect.size() * picture->scale).toSize() + QSize(kShadow + 2, kShadow + 2));
    }
  }
  relayout();
}

const Preview& BoardsView::Parts::previewAt(const CellAddress& address) {
  const auto known = previews.find(address);
  if (known != previews.end()) return known->second;
  Preview& out = previews[address];
  if (const std::optional<BoardMove> move = moveTo(address)) {
    out = preview ? preview(*move) : previewOf(plan, *move);
  } else {
    out.refusal = say(kNothingMoves);
  }
  return out;
}

void BoardsView::Parts::workOne() {
  if (waiting.empty() || !carrying.active()) {
    work.stop();
    return;
  }
  const CellAddress next = waiting.back();
  waiting.pop_back();
  previewAt(next);
  relayout();
}

std::optional<CellAddress> BoardsView::Parts::targetAt(const BoardWidget& board, QPointF point) const {
  const int index = board.layout().cellPressed(point);
  if (index < 0) return std::nullopt;
  const BoardCell& cell = board.layout().cells[static_cast<std::size_t>(index)];
  const auto& breakers = carrying.breakers();
  if (std::find(breakers.begin(), breakers.end(), cell.breaker) != breakers.end()) return std::nullopt;
  const std::optional<BoardMove> move = moveTo(cell.address);
  if (move && move->kind == MoveKind::sendBack) {
    for (const BoardCell& other : board.layout().cells) {
      if (other.kind == CellKind::movedAway && other.circuit == move->circuits.front()) return other.address;
    }
  }
  return cell.address;
}

void BoardsView::Parts::aim(const std::optional<CellAddress>& target) {
  if (!carrying.aim(target)) return;
  if (target) previewAt(*target);
  relayout();
  tellPending();
  if (!target) return;
  BoardWidget* board = boardOf(target->panel);
  const int cell = board != nullptr ? board->layout().cellOf(*target) : -1;
  if (cell < 0) return;
  show(*board, cell);
  if (carrying.phase() == Carrying::Phase::choosing) {
    QAccessibleEvent event(board, QAccessible::Focus);
    event.setChild(cell);
    QAccessible::updateAccessibility(&event);
  }
}

void BoardsView::Parts::tellPending() {
  if (carrying.active() && carrying.target()) {
    const Preview& shown = previewAt(*carrying.target());
    Q_EMIT view.pendingChanged(moveTo(*carrying.target()), &shown);
  } else {
    Q_EMIT view.pendingChanged(std::nullopt, nullptr);
  }
}

void BoardsView::Parts::dragTo(QPoint global) {
  const QPoint corner = view.mapFromGlobal(global) - carrying.grip();
  picture->move(corner - QPoint(1, 1));
  picture->setVisible(picture->cell >= 0);
  picture->raise();
  BoardWidget* board = boardAt(global);
  aim(board == nullptr ? std::nullopt : targetAt(*board, board->layoutPoint(board->mapFromGlobal(global))));
}

void BoardsView::Parts::request(const BoardMove& move) {
  switch (move.kind) {
    case MoveKind::move:
      Q_EMIT view.moveRequested(move.circuits, move.panel, move.position);
      break;
    case MoveKind::sendBack:
      Q_EMIT view.sendBackRequested(move.circuits);
      break;
    case MoveKind::relocate:
      if (move.position) Q_EMIT view.relocateRequested(move.breaker, *move.position);
      break;
    case MoveKind::swap:
      Q_EMIT view.swapRequested(move.breaker, move.other);
      break;
  }
}

void BoardsView::Parts::finish() {
  if (!carrying.active()) return;
  std::optional<BoardMove> move;
  Message reason;
  if (carrying.target()) {
    const Preview& shown = previewAt(*carrying.target());
    if (shown.legal) {
      move = moveTo(*carrying.target());
    } else {
      reason = shown.refusal;
    }
  }
  const std::optional<CellAddress> target = carrying.target();
  if (!move) {
    putBack();
    if (!reason.id.key.empty()) Q_EMIT view.refused(reason);
    return;
  }
  const bool flies = picture->isVisible();
  cancel();
  request(*move);
  // The plan has changed at once; what settles is the picture.
  if (flies && target) fly(*target, kSettle);
}

void BoardsView::Parts::putBack() {
  std::optional<CellAddress> home;
  if (picture->isVisible() && picture->cell >= 0)
    home = picture->layout.cells[static_cast<std::size_t>(picture->cell)].address;
  cancel();
  if (home) fly(*home, kReturn);
}

void BoardsView::Parts::fly(const CellAddress& to, int milliseconds) {
  const BoardWidget* board = boardOf(to.panel);
  const int cell = board != nullptr ? board->layout().cellOf(to) : -1;
  if (cell < 0 || !motionWanted()) return;
  const QRect rect = board->pixels(board->layout().cells[static_cast<std::size_t>(cell)].rect);
  picture->show();
  picture->raise();
  flight->setDuration(milliseconds);
  flight->setStartValue(picture->pos());
  flight->setEndValue(board->mapTo(&view, rect.topLeft()) - QPoint(1, 1));
  flight->start();
}

void BoardsView::Parts::cancel() {
  const bool was = carrying.phase() != Carrying::Phase::idle;
  carrying.cancel();
  work.stop();
  waiting.clear();
  previews.clear();
  if (was || flight->state() != QAbstractAnimation::Running) picture->hide();
  if (!was) return;
  relayout();
  tellPending();
}

void BoardsView::Parts::chooseByKey(BoardWidget& board) {
  const int at = board.focusedCell();
  if (at < 0) return;
  const BreakerId leading = board.layout().cells[static_cast<std::size_t>(at)].breaker;
  if (!leading.valid()) return;
  std::vector<BreakerId> carried{leading};
  if (selected.contains(leading)) {
    for (const BreakerId other : selected) {
      if (other != leading && board.layout().cellOf(other) >= 0) carried.push_back(other);
    }
  } else {
    setSelection({leading}, true);
  }
  // The best free space is the one the edit itself picks when none is named.
  const bool onBackup = stayalight::find(plan, board.panel()) != nullptr &&
                        stayalight::find(plan, board.panel())->role.is(PanelRole::backup);
  const Panel* goal = onBackup ? nullptr : backupPanel(plan);
  // A place that is not shown cannot be chosen.
  if (goal != nullptr && shownPanels[0] != goal->id && shownPanels[1] != goal->id)
    put(goal->id, shownPanels[0] == board.panel() ? 1 : 0);
  carrying.choose(carried);
  take();
  picture->hide();
  std::optional<CellAddress> target;
  if (goal != nullptr) {
    if (const auto move = moveFor(plan, carried, goal->id, std::nullopt)) {
      const Preview best = preview ? preview(*move) : previewOf(plan, *move);
      if (best.legal && !best.spaces.empty())
        target = CellAddress{goal->id, best.spaces.front(), Half::whole};
      if (!best.legal) {
        cancel();
        Q_EMIT view.refused(best.refusal);
        return;
      }
    }
  }
  for (const CellAddress& address : landings()) {
    if (!target && previewAt(address).legal) target = address;
  }
  if (!target) {
    const bool anywhere = !landings().empty();
    cancel();
    Q_EMIT view.refused(say(anywhere ? kNoSpaceFree : kNothingMoves));
    return;
  }
  aim(target);
}

void BoardsView::Parts::stepTarget(int key) {
  std::vector<CellAddress> legal;
  for (const CellAddress& address : landings()) {
    if (previewAt(address).legal) legal.push_back(address);
  }
  if (legal.empty()) return;
  // Down a column, then on to the next: the order in which one reads a panel's spaces from above.
  std::sort(legal.begin(), legal.end());
  const auto here =
      carrying.target() ? std::find(legal.begin(), legal.end(), *carrying.target()) : legal.end();
  if (here == legal.end()) return aim(legal.front());
  const auto at = static_cast<std::size_t>(here - legal.begin());
  if (key == Qt::Key_Up) return aim(legal[(at + legal.size() - 1) % legal.size()]);
  if (key == Qt::Key_Down || key == Qt::Key_M) return aim(legal[(at + 1) % legal.size()]);
  // Sideways: the nearest row of the neighbouring column.
  const auto columnOf = [](const CellAddress& a) { return std::pair(a.panel, a.position.column); };
  std::vector<std::pair<PanelId, Column>> columns;
  for (const CellAddress& address : legal) {
    if (columns.empty() || columns.back() != columnOf(address)) columns.push_back(columnOf(address));
  }
  const auto column =
      static_cast<std::size_t>(std::find(columns.begin(), columns.end(), columnOf(*here)) - columns.begin());
  const auto next = columns[key == Qt::Key_Left ? (column + columns.size() - 1) % columns.size()
                                                : (column + 1) % columns.size()];
  const CellAddress* best = nullptr;
  for (const CellAddress& address : legal) {
    if (columnOf(address) != next) continue;
    if (best == nullptr || std::abs(address.position.row - here->position.row) <
                               std::abs(best->position.row - here->position.row))
      best = &address;
  }
  if (best != nullptr) aim(*best);
}

void BoardsView::Parts::sendSelectionBack() {
  std::vector<CircuitId> circuits;
  for (const BreakerId breaker : selected) {
    const Circuit* circuit = circuitOn(plan, breaker, Reading::planned);
    // From the old space as well: there the breaker is the one the circuit left.
    if (circuit == nullptr) {
      for (const Shared<Circuit>& other : plan.circuits) {
        if (other->breaker == breaker && other->planned.valid() && other->planned != breaker)
          circuit = &*other;
      }
    }
    if (circuit != nullptr && circuit->breaker.valid() && circuit->breaker != circuit->planned)
      circuits.push_back(circuit->id);
  }
  if (circuits.empty()) {
    Q_EMIT view.refused(say(kNothingMoves));
  } else {
    Q_EMIT view.sendBackRequested(circuits);
  }
}

// -- the view
// ----------------------------------------------------------------------------------------------------------

BoardsView::BoardsView(QWidget* parent) : QWidget(parent), parts_(std::make_unique<Parts>(*this)) {
  installBoardAccessibility();
  if (!loadFaces()) qCritical("a built-in typeface could not be loaded");
  parts_->left = boardArea(this);
  parts_->right = boardArea(this);
  for (std::size_t side = 0; side < parts_->choosers.size(); ++side) {
    auto* chooser = new QComboBox(this);
    chooser->setObjectName(side == 0 ? QStringLiteral("leftPanel") : QStringLiteral("rightPanel"));
    chooser->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    chooser->hide();
    auto* label = new QLabel(this);
    label->setFont(screenFont(Face::condensed, 12));
    label->setBuddy(chooser);
    label->hide();
    parts_->labels[side] = label;
    parts_->choosers[side] = chooser;
    connect(chooser, &QComboBox::activated, this, [this, chooser, side](int at) {
      parts_->put(PanelId{chooser->itemData(at).toLongLong()}, side);
    });
  }
  parts_->picture = new CarriedPicture(this);
  parts_->picture->setObjectName(QStringLiteral("carriedPicture"));
  parts_->flight = new QPropertyAnimation(parts_->picture, "pos", this);
  parts_->flight->setEasingCurve(QEasingCurve::OutCubic);
  connect(parts_->flight, &QAbstractAnimation::finished, parts_->picture, &QWidget::hide);
  parts_->work.setInterval(0);
  connect(&parts_->work, &QTimer::timeout, this, [this] { parts_->workOne(); });
  setMinimumSize(scaled(kLeastWidth), scaled(200));
}

BoardsView::~BoardsView() {
  // The boards speak to the parts; they go first.
  delete parts_->left;
  delete parts_->right;
}

void BoardsView::setPlan(const Plan& plan, const Assessment& assessment) {
  parts_->cancel();
  parts_->plan = plan;
  parts_->assessment = assessment;
  parts_->plainLanguage.follow(plan);
  parts_->chooseShown();
  parts_->makeBoards();
  std::erase_if(parts_->selected, [&](BreakerId id) {
    const Breaker* breaker = stayalight::find(parts_->plan, id);
    return breaker == nullptr || !stands(*breaker, Reading::planned);
  });
  parts_->arrange();
}

void BoardsView::setLanguage(const Language* language) {
  parts_->language = language != nullptr ? language : &parts_->plainLanguage;
  parts_->fillChoosers();
  parts_->relayout();
}

void BoardsView::setPalette(const Palette& palette) {
  parts_->palette = palette;
  update();
  for (BoardWidget* board : parts_->boards) board->update();
}

void BoardsView::setDropTest(std::function<bool(const QMimeData&, BreakerId)> test) {
  parts_->dropTest = std::move(test);
}

void BoardsView::setPreview(PreviewOf preview) { parts_->preview = std::move(preview); }

void BoardsView::setUnderBackup(QWidget* widget) {
  delete parts_->under;
  parts_->under = widget;
  if (widget != nullptr) {
    widget->setParent(this);
    widget->show();
  }
  parts_->arrange();
}

void BoardsView::showPanel(PanelId panel) { parts_->bring(panel); }

void BoardsView::showUsualPanels() {
  parts_->chosen = {};
  parts_->chooseShown();
  parts_->makeBoards();
  parts_->arrange();
}

QComboBox* BoardsView::chooser(bool right) const { return parts_->choosers[right ? 1 : 0]; }

std::vector<EntityRef> BoardsView::selection() const { return parts_->refs(); }

void BoardsView::select(const std::vector<BreakerId>& breakers) {
  parts_->setSelection(std::set<BreakerId>(breakers.begin(), breakers.end()), false);
  if (breakers.empty()) return;
  if (const Breaker* first = stayalight::find(parts_->plan, breakers.front())) parts_->bring(first->panel);
  for (const BoardWidget* board : parts_->boards) {
    if (const int cell = board->layout().cellOf(breakers.front()); cell >= 0) parts_->show(*board, cell);
  }
}

void BoardsView::focusBreaker(BreakerId breaker) {
  if (const Breaker* record = stayalight::find(parts_->plan, breaker)) parts_->bring(record->panel);
  for (BoardWidget* board : parts_->boards) {
    const int cell = board->layout().cellOf(breaker);
    if (cell < 0) continue;
    parts_->setSelection({breaker}, true);
    board->setFocus(Qt::OtherFocusReason);
    board->focusCell(cell);
    return;
  }
}

void BoardsView::focusSpace(const CellAddress& space) {
  parts_->bring(space.panel);
  BoardWidget* board = parts_->boardOf(space.panel);
  const int cell = board != nullptr ? board->layout().cellOf(space) : -1;
  if (cell < 0) return;
  board->setFocus(Qt::OtherFocusReason);
  board->focusCell(cell);
  board->pressCell(cell);
}

void BoardsView::setFilter(std::optional<BoardFilter> filter) {
  if (filter == parts_->filter) return;
  parts_->filter = std::move(filter);
  parts_->relayout();
}

const std::optional<BoardFilter>& BoardsView::filter() const { return parts_->filter; }

bool BoardsView::carrying() const { return parts_->carrying.active(); }

std::optional<BoardMove> BoardsView::pendingMove() const {
  if (!parts_->carrying.active() || !parts_->carrying.target()) return std::nullopt;
  return parts_->moveTo(*parts_->carrying.target());
}

void BoardsView::cancel() { parts_->cancel(); }

const BoardLayout* BoardsView::layoutOf(PanelId panel) const {
  const BoardWidget* board = parts_->boardOf(panel);
  return board != nullptr ? &board->layout() : nullptr;
}

QWidget* BoardsView::boardWidget(PanelId panel) const { return parts_->boardOf(panel); }

QPoint BoardsView::pointIn(PanelId panel, QPointF layoutPoint) const {
  const BoardWidget* board = parts_->boardOf(panel);
  return board == nullptr ? QPoint() : board->mapTo(this, (layoutPoint * board->scale()).toPoint());
}

void BoardsView::resizeEvent(QResizeEvent*) { parts_->arrange(); }

void BoardsView::paintEvent(QPaintEvent*) {
  if (parts_->gap.width() <= 0 || !parts_->racewayBetween()) return;
  const double scale = systemScale();
  QPainter painter(this);
  painter.scale(scale, scale);
  const QRectF gap(parts_->gap.x() / scale, parts_->gap.y() / scale, parts_->gap.width() / scale,
                   parts_->gap.height() / scale);
  paint(painter, racewayLayout(parts_->plan, *parts_->language, gap), parts_->palette);
}

}  // namespace stayalight
