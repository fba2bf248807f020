#pragma once

// The machine of a move on the boards: idle, pressed, carried by the pointer, or choosing a space by key. It
// holds no part of the plan and changes none: to leave it is to be back where one was.

#include <QtCore/QPoint>
#include <optional>
#include <vector>

#include "ui/board/layout.h"

namespace stayalight {

class Carrying {
 public:
  enum class Phase : std::uint8_t { idle, pressed, carried, choosing };

  [[nodiscard]] Phase phase() const { return phase_; }
  [[nodiscard]] bool active() const { return phase_ == Phase::carried || phase_ == Phase::choosing; }
  [[nodiscard]] const std::vector<BreakerId>& breakers() const { return breakers_; }
  [[nodiscard]] const std::optional<CellAddress>& target() const { return target_; }
  [[nodiscard]] QPoint grip() const {
    return grip_;
  }  ///< from the cell's corner to where it was taken, in pixels

  /// A button went down on a breaker.
  void press(QPoint global, QPoint grip, std::vector<BreakerId> breakers);
  /// The pointer moved; true where the press has just become a drag: it went as far as `threshold` pixels.
  bool moved(QPoint global, int threshold);
  /// A key takes the breakers up.
  void choose(std::vector<BreakerId> breakers);
  /// True where the target changed.
  bool aim(const std::optional<CellAddress>& target);
  /// The button went up or a key dropped them: where to, if anywhere. Idle afterwards.
  std::optional<CellAddress> drop();
  void cancel();

 private:
  Phase phase_ = Phase::idle;
  std::vector<BreakerId> breakers_;
  std::optional<CellAddress> target_;
  QPoint pressedAt_, grip_;
};

}  // namespace stayalight
