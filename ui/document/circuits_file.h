#pragma once

// Tables of circuits on the disk.

#include <QtCore/QString>

#include "core/directory/circuits.h"

namespace stayalight {

/// Writes the circuits as comma-separated values, whole or not at all; see `writeBytes`.
[[nodiscard]] std::optional<Message> saveCircuits(const Plan& plan, const QString& path);
/// The plan with the circuits of a table; see `readCircuits`. A file that cannot be read is refused with its
/// name and the reason.
[[nodiscard]] std::variant<ReadCircuits, CircuitsRefused> loadCircuits(const Plan& plan, const QString& path,
                                                                       const Watch& watch = {});

}  // namespace stayalight
