#pragma once

// What is carried from window to window: a load from a list onto a breaker, circuits over the clipboard. Each
// also as plain text for other programs.

#include <memory>
#include <optional>
#include <span>

#include "core/catalogue/catalogue.h"
#include "core/message/result.h"

class QMimeData;

namespace stayalight {

inline constexpr const char* kLoadFormat = "application/x-stayalight-load";
inline constexpr const char* kCircuitsFormat = "application/x-stayalight-circuits";

/// The caller owns it.
[[nodiscard]] std::unique_ptr<QMimeData> carriedLoad(const CatalogueEntry& entry);
[[nodiscard]] std::optional<CatalogueEntry> loadIn(const QMimeData& data);

/// Circuits with what must come along: a plan of nothing else, and a line of text each.
[[nodiscard]] Result<std::unique_ptr<QMimeData>> carriedCircuits(const Plan& plan,
                                                                 std::span<const CircuitId> circuits,
                                                                 const Language& language);
/// The part that `pasteCircuits` takes; refused where nothing of the kind is carried, or it cannot be read.
[[nodiscard]] Result<Plan> circuitsIn(const QMimeData* data, const Language& language);

}  // namespace stayalight
