#pragma once

// The real main window with the sample in it, and what a hand does to it.

#include <QtCore/QSettings>
#include <QtCore/QStandardPaths>
#include <QtTest/QtTest>
#include <QtWidgets/QApplication>
#include <QtWidgets/QMessageBox>
#include <QtWidgets/QPushButton>

#include "ui/shell/main_window.h"
#include "ui/style/fonts.h"

namespace stayalight::window {

inline bool prepare() {
  QApplication::setOrganizationName(QStringLiteral("stayalight"));
  QApplication::setApplicationName(QStringLiteral("stayalight-test"));
  QStandardPaths::setTestModeEnabled(true);
  QSettings().clear();
  return loadFaces();
}

inline const Circuit* circuitNamed(const Plan& plan, const std::string& name) {
  for (const auto& circuit : plan.circuits) {
    if (circuit->name == name) return &*circuit;
  }
  return nullptr;
}

/// A circuit of the main panel that stays there and could go to the backup subpanel by itself.
inline const Circuit* movableCircuit(const Plan& plan) {
  for (const auto& circuit : plan.circuits) {
    const Breaker* breaker = find(plan, circuit->planned);
    const Panel* panel = breaker != nullptr ? find(plan, breaker->panel) : nullptr;
    if (panel == nullptr || !panel->role.is(PanelRole::main) || breaker->poles != 1 ||
        circuit->multiwire != 0 || !breaker->half.is(Half::whole))
      continue;
    const CircuitId ids[] = {circuit->id};
    if (moveCircuits(plan, ids, backupPanel(plan)->id).ok()) return &*circuit;
  }
  return nullptr;
}

/// The middle of a breaker's cell, in the coordinates of the widget that takes its mouse events.
inline QPoint cellPoint(MainWindow& window, PanelId panel, BreakerId breaker) {
  const BoardLayout* board = window.boards()->layoutOf(panel);
  const int cell = board->cellOf(breaker);
  const QPoint inView =
      window.boards()->pointIn(panel, board->cells[static_cast<std::size_t>(cell)].rect.center());
  return window.boards()->boardWidget(panel)->mapFrom(window.boards(), inView);
}
inline QPoint spacePoint(MainWindow& window, PanelId panel, SpacePosition position) {
  const BoardLayout* board = window.boards()->layoutOf(panel);
  const int cell = board->cellOf(CellAddress{panel, position, Half::whole});
  return window.boards()->pointIn(panel, board->cells[static_cast<std::size_t>(cell)].rect.center());
}

/// Presses a button of the next message box; the box runs an event loop of its own.
inline void answerNextBox(const QString& button, QString* text = nullptr) {
  auto* timer = new QTimer(qApp);
  timer->setInterval(30);
  QObject::connect(timer, &QTimer::timeout, timer, [timer, button, text] {
    auto* box = qobject_cast<QMessageBox*>(QApplication::activeModalWidget());
    if (box == nullptr) return;
    timer->stop();
    timer->deleteLater();
    if (text != nullptr) *text = box->text();
    for (QAbstractButton* each : box->buttons()) {
      if (each->objectName() == button || button.isEmpty()) {
        each->click();
        return;
      }
    }
    box->reject();
  });
  timer->start();
}

}  // namespace stayalight::window
