#pragma once

// What the view and its boards share.

#include <QtCore/QPropertyAnimation>
#include <QtCore/QTimer>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QLabel>
#include <QtWidgets/QScrollArea>
#include <array>
#include <map>
#include <set>

#include "ui/boards/board_widget.h"
#include "ui/boards/boards_view.h"
#include "ui/boards/carrying.h"
#include "ui/wording/language.h"

namespace stayalight {

/// The picture under the pointer while a breaker is carried.
class CarriedPicture : public QWidget {
 public:
  explicit CarriedPicture(QWidget* parent);
  BoardLayout layout;
  int cell = -1;
  double scale = 1.0;
  Palette palette{Theme::light};

 protected:
  void paintEvent(QPaintEvent* event) override;
};

struct BoardsView::Parts {
  explicit Parts(BoardsView& theView) : view(theView) {}

  BoardsView& view;
  Plan plan;
  Assessment assessment;
  ProgramLanguage plainLanguage;
  const Language* language = &plainLanguage;
  Palette palette{Theme::light};
  PreviewOf preview;
  std::function<bool(const QMimeData&, BreakerId)> dropTest;

  std::vector<BoardWidget*> boards;    ///< left, right
  std::array<PanelId, 2> shownPanels;  ///< on the left and on the right; none where the plan has no more
  std::array<PanelId, 2> chosen;       ///< by hand; none: what usually stands there
  std::array<QComboBox*, 2> choosers{};
  std::array<QLabel*, 2> labels{};  ///< of the choosers
  QScrollArea* left = nullptr;
  QScrollArea* right = nullptr;
  QWidget* under = nullptr;
  CarriedPicture* picture = nullptr;
  QPropertyAnimation* flight = nullptr;  ///< of the picture, when it is let go
  QRect gap;
  double rowHeight = kRowHeight;
  std::array<int, 2> bars{};  ///< widths of the scroll bars: a board that scrolls is narrower by it

  std::set<BreakerId> selected;
  std::optional<BoardFilter> filter;
  Carrying carrying;
  std::map<CellAddress, Preview> previews;
  std::vector<CellAddress>
      waiting;  ///< landing spaces whose preview is still to be worked out, next one last
  QTimer work;

  // -- layout
  void chooseShown();
  void fillChoosers();
  void put(PanelId panel, std::size_t side);  ///< the other board gives it up
  void bring(PanelId panel);                  ///< shows it where it belongs, unless it is shown
  [[nodiscard]] bool racewayBetween() const;
  void makeBoards();
  void arrange();
  void relayout();
  [[nodiscard]] BoardState stateFor(const BoardWidget& board) const;
  [[nodiscard]] BoardWidget* boardOf(PanelId panel) const;
  [[nodiscard]] BoardWidget* boardAt(QPoint global) const;

  // -- selection
  void setSelection(std::set<BreakerId> breakers, bool tell);
  void tellSelection() { Q_EMIT view.selectionChanged(view.selection()); }
  void show(const BoardWidget& board, int cell);

  // -- carrying
  void take();  ///< the landing spaces of what is carried
  [[nodiscard]] std::vector<CellAddress> landings() const;
  [[nodiscard]] std::optional<BoardMove> moveTo(const CellAddress& address) const;
  [[nodiscard]] std::optional<CellAddress> targetAt(const BoardWidget& board, QPointF point) const;
  const Preview& previewAt(const CellAddress& address);
  void workOne();
  void aim(const std::optional<CellAddress>& target);
  void tellPending();
  void dragTo(QPoint global);
  void finish();  ///< the pointer or Enter lets go
  void cancel();
  void putBack();  ///< as `cancel`, and the picture returns home
  void fly(const CellAddress& to, int milliseconds);
  void request(const BoardMove& move);
  void chooseByKey(BoardWidget& board);
  void stepTarget(int key);
  void sendSelectionBack();
  [[nodiscard]] std::vector<EntityRef> refs() const;
};

}  // namespace stayalight
