#pragma once

// What the answers column says of room: how full raceways, boxes and a panel's gutter are.

#include "ui/answers/answers_text.h"

namespace stayalight {

/// No lines where the plan has neither raceway nor box nor a splice in a panel.
[[nodiscard]] AnswerSection roomSection(const Plan& plan, const Assessment& assessment,
                                        const Language& language);

/// The battery's cable, and buses that two sources feed.
void addSourceLines(const Plan& plan, const Assessment& assessment, const Language& language,
                    std::vector<AnswerLine>& lines);

}  // namespace stayalight
