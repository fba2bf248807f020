#pragma once

// What the answers column says, as values: sentences and figures with their limits. No widget here.

#include <QtCore/QString>
#include <array>
#include <optional>
#include <vector>

#include "core/assess/assess.h"

namespace stayalight {

/// Which number of a working a figure is: its value in the unit of the step that made it, and the rooms that
/// may have made it, by the first word of their formulas.
struct WorkingTarget {
  QString title;                          ///< "Worst start on L2"
  QString shown;                          ///< "39.8 A likely, up to 45.4 A"
  std::vector<double> values;             ///< the figure, and others that stand beside it
  std::vector<std::string_view> rooms;    ///< "start", "use"
  std::optional<Message> note{};          ///< of the one step, where the value alone may be met twice
  std::optional<WorkingSubject> about{};  ///< what the figure is of: only steps of it are looked at
  bool wholeSubject = false;              ///< all steps of it, not those alone that the figure came from
};

struct AnswerLine {
  QString label;
  QString value;
  QString detail;  ///< a second line; empty where there is none
  std::optional<Verdict> verdict;
  WorkingTarget working;
};
struct AnswerSection {
  QString heading;
  QString note;
  std::vector<AnswerLine> lines;
};

/// A leg's two lanes on one amp scale.
struct LegBar {
  Leg leg = Leg::l1;
  AcAmperes likelyPeak, connected;
  std::optional<AcAmperes> limit;
  bool hasStart = false;
  QString startName;
  AcAmperes averageBase, likelyBase, likelySum, highSum;
  std::optional<AcAmperes> startLimit;        ///< at the high case's time
  std::optional<AcAmperes> startLimitLikely;  ///< at the likely time
  Seconds highTime;
  Verdict running = Verdict::notKnown;
  Verdict start = Verdict::notKnown;
  WorkingTarget peakWorking, startWorking;
};

struct Answers {
  QString headline;
  QString second;
  QString caution;  ///< where a load is marked medical
  WorkingTarget hours;
  std::array<LegBar, 2> bars;
  bool hasBars = false;
  std::vector<AnswerSection> sections;
};

[[nodiscard]] Answers answersFor(const Plan& plan, const Assessment& assessment, const Language& language);
/// The one sentence about hours, with the words "an estimated".
[[nodiscard]] QString hoursSentence(const Plan& plan, const Assessment& assessment, const Language& language);
/// "50 A 2-pole, 3 x 6 AWG Cu, 10 AWG ground".
[[nodiscard]] QString segmentWords(const SegmentFigures& segment, const Language& language);
[[nodiscard]] QString segmentName(Segment segment, const Language& language);

}  // namespace stayalight
