#pragma once

// A value or the message why there is none.

#include <utility>
#include <variant>

#include "core/message/message.h"

namespace stayalight {

template <class T>
class [[nodiscard]] Result {
 public:
  Result(T value) : state_(std::in_place_index<0>, std::move(value)) {}  // NOLINT: implicit by design
  Result(Message refusal) : state_(std::in_place_index<1>, std::move(refusal)) {}  // NOLINT

  [[nodiscard]] bool ok() const { return state_.index() == 0; }
  explicit operator bool() const { return ok(); }
  /// Only where ok().
  [[nodiscard]] const T& value() const& { return std::get<0>(state_); }
  [[nodiscard]] T& value() & { return std::get<0>(state_); }
  [[nodiscard]] T&& value() && { return std::get<0>(std::move(state_)); }
  /// Only where not ok().
  [[nodiscard]] const Message& refusal() const { return std::get<1>(state_); }

 private:
  std::variant<T, Message> state_;
};

}  // namespace stayalight
