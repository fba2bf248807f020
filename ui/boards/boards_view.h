#pragma once

// The two boards that people touch. One widget holds both, the raceway between them, and whatever the window
// puts under the backup board; a breaker is carried across it by a small machine of its own (idle, pressed,
// carried, choosing by key), with no nested event loop.

#include <QtCore/QMimeData>
#include <QtWidgets/QWidget>
#include <functional>
#include <memory>

#include "ui/board/layout.h"
#include "ui/board/move.h"
#include "ui/style/palette.h"

class QComboBox;

namespace stayalight {

class BoardsView : public QWidget {
  Q_OBJECT
 public:
  explicit BoardsView(QWidget* parent = nullptr);
  ~BoardsView() override;

  /// What is shown. Selection and focus stay where their breakers still stand. The references are copied.
  void setPlan(const Plan& plan, const Assessment& assessment);
  /// Kept by pointer: it must outlive the view or be replaced.
  void setLanguage(const Language* language);
  void setPalette(const Palette& palette);
  /// Asked for each landing space while a breaker is carried; without it the boards use previewOf on the
  /// shown plan.
  void setPreview(PreviewOf preview);
  /// Says whether something dragged from outside may be dropped on a breaker; without it nothing may.
  void setDropTest(std::function<bool(const QMimeData& data, BreakerId breaker)> test);
  /// Put under the backup board; the view owns it from then on.
  void setUnderBackup(QWidget* widget);

  /// A board shows one panel; where the plan has more than two, each board has a chooser above it. Shows the
  /// panel where it belongs (a backup subpanel on the right), unless it is shown.
  void showPanel(PanelId panel);
  /// On the left the main panel, on the right the backup subpanel, whatever was chosen.
  void showUsualPanels();
  /// The chooser above the left or the right board; hidden where there is nothing to choose.
  [[nodiscard]] QComboBox* chooser(bool right) const;

  [[nodiscard]] std::vector<EntityRef> selection() const;  ///< breakers
  void select(const std::vector<BreakerId>& breakers);     ///< no signal; scrolls the first into sight
  void focusBreaker(BreakerId breaker);                    ///< selects it and takes the keyboard
  void focusSpace(const CellAddress& space);  ///< takes the keyboard there; selects what it holds
  /// While something is searched for: what does not match is drawn quiet. None: nothing is.
  void setFilter(std::optional<BoardFilter> filter);
  [[nodiscard]] const std::optional<BoardFilter>& filter() const;
  [[nodiscard]] bool carrying() const;  ///< dragged, or choosing a space by key
  /// The landing space now under the pointer or chosen by key, and its preview; for the card and the status
  /// line.
  [[nodiscard]] std::optional<BoardMove> pendingMove() const;
  void cancel();  ///< as Escape

  /// None of a panel that is not shown.
  [[nodiscard]] const BoardLayout* layoutOf(PanelId panel) const;
  /// A point of that board's layout in this widget's coordinates, and the widget that takes its mouse events.
  [[nodiscard]] QWidget* boardWidget(PanelId panel) const;
  [[nodiscard]] QPoint pointIn(PanelId panel, QPointF layoutPoint) const;

 Q_SIGNALS:
  void moveRequested(const std::vector<CircuitId>& circuits, PanelId panel,
                     std::optional<SpacePosition> position);
  void sendBackRequested(const std::vector<CircuitId>& circuits);
  void relocateRequested(BreakerId breaker, SpacePosition position);
  void swapRequested(BreakerId first, BreakerId second);
  void selectionChanged(const std::vector<EntityRef>& breakers);
  void removeRequested(const std::vector<EntityRef>& breakers);
  void factsRequested(EntityRef breaker);    ///< Enter or double click: show what is known of it
  void workingRequested(EntityRef breaker);  ///< W: how its figure came about
  /// The landing changed while carrying; no move: none is legal there, or the drag ended. `preview` is then
  /// null.
  void pendingChanged(const std::optional<BoardMove>& move, const Preview* preview);
  /// Something from outside is held over a breaker; none: over no breaker that takes it, or not any more.
  void heldOver(const QMimeData* data, std::optional<BreakerId> breaker);
  void dropped(const QMimeData* data, BreakerId breaker);
  void refused(const Message& reason);  ///< a drop or a key that was not possible, for the status line
  /// Menu of a cell; the window adds its entries and shows it.
  void contextMenuRequested(EntityRef breaker, QPoint global);

 protected:
  void resizeEvent(QResizeEvent* event) override;
  void paintEvent(QPaintEvent* event) override;

 private:
  friend class BoardWidget;
  struct Parts;
  std::unique_ptr<Parts> parts_;
};

}  // namespace stayalight
