#include <QtGui/QAction>
#include <QtGui/QActionGroup>
#include <QtWidgets/QApplication>
#include <QtWidgets/QSplitter>
#include <QtWidgets/QStackedWidget>

#include "ui/search/found_list.h"
#include "ui/search/search_bar.h"
#include "ui/shell/main_window.h"

namespace stayalight {

void MainWindow::connectSearch() {
  connect(search_, &SearchBar::searched, this, [this] { showFound(); });
  connect(search_, &SearchBar::closeRequested, this, [this] { closeSearch(); });
  connect(found_, &FoundList::chosen, this, [this](const Found& found) { goTo(found); });
}

void MainWindow::openSearch() {
  if (!open_) return;
  if (boards_->carrying()) boards_->cancel();
  if (search_->isHidden()) {
    beforeSearch_ = SearchOrigin{};
    beforeSearch_->place = places_->currentIndex() == 1 ? Command::paper
                           : inSurvey()                 ? Command::survey
                                                        : Command::boards;
    beforeSearch_->side = side_->currentIndex() == 1   ? Command::inspector
                          : side_->currentIndex() == 2 ? Command::catalogue
                                                       : Command::answers;
    beforeSearch_->focus = QApplication::focusWidget();
    beforeSearch_->selected = selectedBreakers();
  }
  showPlace(Command::boards);
  if (search_->isHidden()) {
    // The boards keep their height: the row below gives the room.
    rowsBeforeSearch_ = rows_->sizes();
    search_->show();
    const int room = search_->sizeHint().height();
    rows_->setSizes({rowsBeforeSearch_[0] + room, rowsBeforeSearch_[1] - room});
  }
  side_->setCurrentWidget(found_);
  showNoSideChosen();
  search_->start();
  showFound();
}

// What was found stands in the right column: none of its tabs is the chosen one.
void MainWindow::showNoSideChosen() {
  for (const Command side : {Command::answers, Command::inspector, Command::catalogue}) {
    QActionGroup* group = actions_[side]->actionGroup();
    group->setExclusionPolicy(QActionGroup::ExclusionPolicy::ExclusiveOptional);
    actions_[side]->setChecked(false);
    group->setExclusionPolicy(QActionGroup::ExclusionPolicy::Exclusive);
  }
}

void MainWindow::showFound() {
  if (search_->isHidden()) return;
  SearchResult result = search(document_->plan(), assessment_.findings, search_->text(), language_);
  boards_->setFilter(search_->text().trimmed().isEmpty() ? std::nullopt
                                                         : std::optional(std::move(result.matching)));
  search_->showCount(result.found.size(), language_);
  found_->show(std::move(result.found), language_);
}

void MainWindow::closeSearch() {
  if (search_->isHidden()) return;
  search_->hide();
  rows_->setSizes(rowsBeforeSearch_);
  search_->clear();
  boards_->setFilter(std::nullopt);
  found_->show({}, language_);
  // Where something was chosen it stays chosen; else all is as it was.
  const std::optional<SearchOrigin> origin = std::exchange(beforeSearch_, std::nullopt);
  if (!origin) {
    if (side_->currentWidget() == found_) showSide(Command::inspector);
    boards_->setFocus();
    return;
  }
  showPlace(origin->place);
  showSide(origin->side);
  boards_->select(origin->selected);
  showSelection();
  if (origin->focus && origin->focus->isVisible())
    origin->focus->setFocus(Qt::OtherFocusReason);
  else
    boards_->setFocus();
}

void MainWindow::goTo(const Found& found) {
  beforeSearch_.reset();
  if (found.kind == FoundKind::finding) {
    if (found.finding < assessment_.findings.size()) jumpTo(Finding(assessment_.findings[found.finding]));
    showSide(Command::inspector);
    return;
  }
  showPlace(Command::boards);
  if (found.space) {
    boards_->focusSpace(*found.space);
    inspector_->look(found.what);
  } else {
    if (found.breaker.valid()) boards_->focusBreaker(found.breaker);
    inspector_->look(found.what);
  }
  showSide(Command::inspector);
  if (!found.breaker.valid() && !found.space) inspector_->focusField({});
}

}  // namespace stayalight
