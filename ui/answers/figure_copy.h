#pragma once

// A figure with its unit as text: on the clipboard by Ctrl+C or the menu of the figure.

#include <QtCore/QString>
#include <functional>

class QEvent;
class QPoint;
class QWidget;

namespace stayalight {

class Language;

/// "Likely peak on L2 11.6 A": what stands before the figure and the figure, without line breaks.
[[nodiscard]] QString figureAsText(const QString& label, const QString& figure);
void copyFigure(const QString& text);
/// Menu with "Copy" and, where there is one, the way to the working; it deletes itself.
void openFigureMenu(QWidget* owner, QPoint global, const QString& text, const Language& language,
                    const std::function<void()>& working);
/// True where the event is the copy key: then it is taken before a shortcut of the window gets it.
[[nodiscard]] bool isCopyKey(QEvent* event);

}  // namespace stayalight
