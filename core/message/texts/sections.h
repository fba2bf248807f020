#pragma once

// The sections of the table of texts, one file a room.

#include <span>

#include "core/message/message.h"

// Marks an English text for translation. lupdate is told that TEXT is an alias of QT_TRANSLATE_NOOP.
#define TEXT(context, english) english

namespace stayalight::texts_of {
extern const std::span<const TextRow> field;
extern const std::span<const TextRow> fieldSupply;
extern const std::span<const TextRow> panel;
extern const std::span<const TextRow> edit;
extern const std::span<const TextRow> directory;
extern const std::span<const TextRow> survey;
extern const std::span<const TextRow> transfer;
extern const std::span<const TextRow> use;
extern const std::span<const TextRow> demand;
extern const std::span<const TextRow> start;
extern const std::span<const TextRow> wiring;
extern const std::span<const TextRow> outage;
extern const std::span<const TextRow> onsite;
extern const std::span<const TextRow> review;
extern const std::span<const TextRow> file;
extern const std::span<const TextRow> wording;
extern const std::span<const TextRow> board;
extern const std::span<const TextRow> answers;
extern const std::span<const TextRow> shell;
extern const std::span<const TextRow> inspector;
extern const std::span<const TextRow> paper;
extern const std::span<const TextRow> catalogue;
extern const std::span<const TextRow> search;
extern const std::span<const TextRow> settings;
}  // namespace stayalight::texts_of
