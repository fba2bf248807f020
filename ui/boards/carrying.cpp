#include "ui/boards/carrying.h"

namespace stayalight {

void Carrying::press(QPoint global, QPoint grip, std::vector<BreakerId> breakers) {
  cancel();
  if (breakers.empty()) return;
  phase_ = Phase::pressed;
  pressedAt_ = global;
  grip_ = grip;
  breakers_ = std::move(breakers);
}

bool Carrying::moved(QPoint global, int threshold) {
  if (phase_ != Phase::pressed || (global - pressedAt_).manhattanLength() < threshold) return false;
  phase_ = Phase::carried;
  return true;
}

void Carrying::choose(std::vector<BreakerId> breakers) {
  cancel();
  if (breakers.empty()) return;
  phase_ = Phase::choosing;
  breakers_ = std::move(breakers);
}

bool Carrying::aim(const std::optional<CellAddress>& target) {
  if (!active() || target == target_) return false;
  target_ = target;
  return true;
}

std::optional<CellAddress> Carrying::drop() {
  const std::optional<CellAddress> out = active() ? target_ : std::nullopt;
  cancel();
  return out;
}

void Carrying::cancel() {
  phase_ = Phase::idle;
  breakers_.clear();
  target_.reset();
}

}  // namespace stayalight
