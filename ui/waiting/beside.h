#pragma once

// Work beside the window: whatever takes long is done on a thread of its own, while the window goes on
// painting and answering.

#include <QtCore/QString>
#include <functional>

#include "core/message/message.h"
#include "core/message/watch.h"

class QWidget;

namespace stayalight {

/// Comes back when the work has ended; false where it was told to stop. Work that takes longer than a moment
/// gets a dialog of the window that says what is done and how far it is, with a way to cancel it (also
/// Escape). Until then keys and clicks wait, so nothing changes what the work goes by. A window that is told
/// to close meanwhile stops the work and closes after it. `work` may touch nothing of the window; it stops
/// when its watch says so, and what is left of a stopped work is thrown away by the caller.
bool beside(QWidget* widget, const Language& language, const QString& what,
            const std::function<void(const Watch&)>& work);

/// True while work is done beside this window: nothing else is to be begun in it.
[[nodiscard]] bool worksBeside(const QWidget* widget);

/// How long work may take unseen; with 0 the dialog stands before the work begins. Tests set it.
void setUnseenMilliseconds(int milliseconds);
inline constexpr int kUnseenMilliseconds = 300;

}  // namespace stayalight
