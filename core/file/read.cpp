#include <algorithm>
#include <exception>
#include <map>
#include <set>

#include "core/file/tree.h"
#include "core/panel/consistency.h"

namespace stayalight {
namespace {

constexpr MessageId kNotPlan{"file.not_a_plan"};
constexpr MessageId kOtherFormat{"file.other_format"};
constexpr MessageId kWrongType{"file.wrong_type"};
constexpr MessageId kAt{"file.at"};
constexpr MessageId kIn{"file.in"};
constexpr MessageId kIdMissing{"file.id_missing"};
constexpr MessageId kDuplicateId{"file.duplicate_id"};
constexpr MessageId kDangling{"file.dangling"};
constexpr MessageId kHigherLevel{"file.higher_level"};
constexpr MessageId kKeptKeys{"file.kept_keys"};
constexpr MessageId kKeptWords{"file.kept_words"};
constexpr MessageId kTooLittleMemory{"file.no_memory"};

constexpr MessageId kNullName{"file.type_null"};
constexpr MessageId kFlagName{"file.type_flag"};
constexpr MessageId kWholeName{"file.type_whole"};
constexpr MessageId kNumberName{"file.type_number"};
constexpr MessageId kTextName{"file.type_text"};
constexpr MessageId kListName{"file.type_list"};
constexpr MessageId kObjectName{"file.type_object"};

using json::Node;

MessageId typeName(const Node& node) {
  constexpr std::array<MessageId, 7> kNames = {kNullName, kFlagName, kWholeName, kNumberName,
                                               kTextName, kListName, kObjectName};
  return kNames[node.value.index()];
}

MessageId typeName(FieldKind kind) {
  switch (kind) {
    case FieldKind::flag:
      return kFlagName;
    case FieldKind::whole:
    case FieldKind::identity:
    case FieldKind::reference:
      return kWholeName;
    case FieldKind::number:
      return kNumberName;
    case FieldKind::text:
    case FieldKind::choice:
      return kTextName;
    case FieldKind::fact:
      return kObjectName;
  }
  return kTextName;
}

std::vector<Message> one(Message message) { return {std::move(message)}; }

/// A wrong value ends the reading; the exception stays in this file.
struct Refused : std::exception {
  explicit Refused(Message what) : message(std::move(what)) {}
  Message message;
};

/// Where a reference or an id stands, to be looked up when all ids are known.
struct Mention {
  RecordKind kind = RecordKind::plan;
  std::int64_t id = 0;
  int line = 0;
  std::string path;
};

class Reader {
 public:
  Reader(const std::string& name, std::vector<Message>& notes, double lines, const Watch& watch)
      : name_(name), notes_(notes), lines_(lines), watch_(watch) {}

  Plan read(const Node& root) {
    Plan plan;
    readHeader(root, plan.header);
    readRecord(root, RecordKind::plan, &plan, "");
    checkIds();
    checkReferences();
    sortById(plan.panels);
    sortById(plan.breakers);
    sortById(plan.circuits);
    sortById(plan.runs);
    if (auto wrong = inconsistency(plan)) throw Refused(say(kIn, name_, one(std::move(*wrong))));
    if (keptKeys_ > 0) notes_.push_back(say(kKeptKeys, name_, keptKeys_, firstKey_));
    if (keptWords_ > 0) notes_.push_back(say(kKeptWords, name_, keptWords_, firstWord_));
    return plan;
  }

 private:
  [[noreturn]] void refuseType(const Node& node, const std::string& path, MessageId wanted) const {
    throw Refused(
        say(kWrongType, name_, std::int64_t{node.line}, path, one(say(wanted)), one(say(typeName(node)))));
  }
  [[noreturn]] void refuseAt(const Node& node, const std::string& path, Message why) const {
    throw Refused(say(kAt, name_, std::int64_t{node.line}, path, one(std::move(why))));
  }

  void readHeader(const Node& root, FileHeader& header) {
    const Node* node = root.find("stayalight");
    const auto* object = node != nullptr ? node->as<json::Object>() : nullptr;
    const Node* format = object != nullptr ? node->find("format") : nullptr;
    if (format == nullptr) throw Refused(say(kNotPlan, name_));
    const auto* number = format->as<std::int64_t>();
    if (number == nullptr) refuseType(*format, "/stayalight/format", kWholeName);
    if (*number != kFormat) throw Refused(say(kOtherFormat, name_, *number, std::int64_t{kFormat}));
    std::string previous;
    for (const auto& [key, value] : *object) {
      if (key == "level") {
        const auto* level = value.as<std::int64_t>();
        if (level == nullptr) refuseType(value, "/stayalight/level", kWholeName);
        constexpr std::int64_t kHighest = 1000000;
        if (*level < 1 || *level > kHighest) {
          refuseAt(value, "/stayalight/level",
                   say(MessageId{"field.out_of_range"}, key, Figure{static_cast<double>(*level), "", 0},
                       Figure{1, "", 0}, Figure{static_cast<double>(kHighest), "", 0}));
        }
        if (*level > kLevel) {
          header.level = static_cast<std::int32_t>(*level);
          notes_.push_back(say(kHigherLevel, name_, *level, std::int64_t{kLevel}));
        }
      } else if (key != "format" && key != "program") {
        keep(header.unknown, key, value, previous, "/stayalight/" + key);
      }
      previous = key;
    }
  }

  void keep(std::vector<UnknownKey>& unknown, const std::string& key, const Node& value,
            const std::string& previous, const std::string& path) {
    UnknownKey kept{key, {}, previous};
    json::appendValue(kept.json, value);
    unknown.push_back(std::move(kept));
    if (keptKeys_++ == 0) firstKey_ = json::shown(path);
  }

  void readRecord(const Node& node, RecordKind kind, void* record, const std::string& path) {
    const auto* object = node.as<json::Object>();
    if (object == nullptr) refuseType(node, path, kObjectName);
    const RecordType& type = recordType(kind);
    std::vector<UnknownKey> unknown;
    std::string previous;
    bool hasId = false;
    for (const auto& [key, value] : *object) {
      const std::string here = path + "/" + json::shown(key);
      const Field* field = fieldOf(kind, key);
      const Children* children = childrenOf(type, key);
      if (field != nullptr) {
        hasId = hasId || field->kind == FieldKind::identity;
        readField(value, *field, record, here, kind);
      } else if (children != nullptr) {
        readChildren(value, *children, kind, record, here);
      } else if (kind != RecordKind::plan || key != "stayalight") {
        keep(unknown, key, value, previous, here);
      }
      previous = key;
    }
    const bool needsId = !type.fields.empty() && type.fields.front().kind == FieldKind::identity;
    if (needsId && !hasId) refuseAt(node, path, say(kIdMissing));
    inTableOrder(type, unknown);
    type.editUnknown(record) = std::move(unknown);
  }

  static const Children* childrenOf(const RecordType& type, std::string_view key) {
    for (const Children& row : type.children) {
      if (row.key == key) return &row;
    }
    return nullptr;
  }

  /// Unknown keys in the order in which they will be written: each behind the key it followed.
  static void inTableOrder(const RecordType& type, std::vector<UnknownKey>& unknown) {
    std::map<std::string, std::ptrdiff_t, std::less<>> rank;
    std::ptrdiff_t next = 0;
    rank.emplace("", next++);
    rank.emplace("stayalight", next++);
    for (const Field& field : type.fields) rank.emplace(field.key, next++);
    for (const Children& children : type.children) rank.emplace(children.key, next++);
    // A key that followed an unknown one stands where that one stands.
    for (const UnknownKey& key : unknown) rank[key.key] = rank[key.after];
    std::stable_sort(unknown.begin(), unknown.end(),
                     [&](const UnknownKey& a, const UnknownKey& b) { return rank[a.key] < rank[b.key]; });
  }

  void readChildren(const Node& node, const Children& children, RecordKind kind, void* record,
                    const std::string& path) {
    if (children.single) {
      readRecord(node, children.kind, children.edit(record, 0), path);
      return;
    }
    const auto* list = node.as<json::List>();
    if (list == nullptr) refuseType(node, path, kListName);
    for (std::size_t i = 0; i < list->size(); ++i) {
      // The long lists are those of the plan itself. How far it is, its line says.
      if (kind == RecordKind::plan && !goesOn(watch_, (*list)[i].line / lines_))
        throw Refused(say(json::kStopped, name_));
      readRecord((*list)[i], children.kind, children.append(record), path + "/" + std::to_string(i));
    }
  }

  void readField(const Node& node, const Field& field, void* record, const std::string& path,
                 RecordKind kind) {
    const FieldValue value = valueOf(node, field, path);
    if (auto wrong = check(field, value)) refuseAt(node, path, std::move(*wrong));
    if (field.kind == FieldKind::choice) noteWord(field, std::get<std::string>(value), path);
    if (field.kind == FieldKind::identity)
      ids_.push_back({kind, std::get<std::int64_t>(value), node.line, path});
    if (field.kind == FieldKind::reference) {
      const std::int64_t id = std::get<std::int64_t>(value);
      if (id != 0) references_.push_back({field.target, id, node.line, path});
    }
    field.set(record, value);
  }

  void noteWord(const Field& field, const std::string& word, const std::string& path) {
    if (std::find(field.choices.begin(), field.choices.end(), word) != field.choices.end()) return;
    if (keptWords_++ == 0) firstWord_ = json::shown(path + " \"" + word + "\"");
  }

  FieldValue valueOf(const Node& node, const Field& field, const std::string& path) {
    switch (field.kind) {
      case FieldKind::flag:
        if (const auto* flag = node.as<bool>()) return *flag;
        break;
      case FieldKind::whole:
      case FieldKind::identity:
      case FieldKind::reference:
        if (const auto* whole = node.as<std::int64_t>()) return *whole;
        break;
      case FieldKind::number:
        if (node.as<double>() != nullptr || node.as<std::int64_t>() != nullptr) return numberOf(node, path);
        break;
      case FieldKind::text:
      case FieldKind::choice:
        if (const auto* text = node.as<std::string>()) return *text;
        break;
      case FieldKind::fact:
        if (node.as<json::Object>() != nullptr) return factOf(node, path);
        break;
    }
    refuseType(node, path, typeName(field.kind));
  }

  double numberOf(const Node& node, const std::string& path) const {
    if (const auto* number = node.as<double>()) return *number;
    if (const auto* whole = node.as<std::int64_t>()) return static_cast<double>(*whole);
    refuseType(node, path, kNumberName);
  }

  std::string textOf(const Node& node, const std::string& path) const {
    if (const auto* text = node.as<std::string>()) return *text;
    refuseType(node, path, kTextName);
  }

  FactValue factOf(const Node& node, const std::string& path) {
    FactValue fact;
    std::string previous;
    for (const auto& [key, value] : *node.as<json::Object>()) {
      const std::string here = path + "/" + json::shown(key);
      if (key == "value")
        fact.value = numberOf(value, here);
      else if (key == "low")
        fact.low = numberOf(value, here);
      else if (key == "high")
        fact.high = numberOf(value, here);
      else if (key == "who")
        fact.who = textOf(value, here);
      else if (key == "when")
        fact.when = textOf(value, here);
      else if (key == "how")
        fact.how = textOf(value, here);
      else if (key == "grade")
        readGrade(value, here, fact);
      else
        keep(fact.unknown, key, value, previous, here);
      previous = key;
    }
    inFactOrder(fact.unknown);
    return fact;
  }

  void readGrade(const Node& node, const std::string& path, FactValue& fact) {
    const std::string word = textOf(node, path);
    const auto* const known = std::find(kGradeWords.begin(), kGradeWords.end(), word);
    if (known != kGradeWords.end()) {
      fact.grade = static_cast<Grade>(known - kGradeWords.begin());
      return;
    }
    UnknownKey kept{"grade", {}, "value"};
    json::appendText(kept.json, word);
    fact.unknown.push_back(std::move(kept));
    if (keptWords_++ == 0) firstWord_ = json::shown(path + " \"" + word + "\"");
  }

  /// As `inTableOrder`, for the parts of a fact.
  static void inFactOrder(std::vector<UnknownKey>& unknown) {
    static constexpr std::array<std::string_view, 8> kOrder = {"",     "value", "grade", "low",
                                                               "high", "who",   "when",  "how"};
    std::map<std::string, std::ptrdiff_t, std::less<>> rank;
    for (std::size_t i = 0; i < kOrder.size(); ++i) rank.emplace(kOrder[i], static_cast<std::ptrdiff_t>(i));
    for (const UnknownKey& key : unknown) {
      if (key.key != "grade") rank[key.key] = rank[key.after];
    }
    std::stable_sort(unknown.begin(), unknown.end(),
                     [&](const UnknownKey& a, const UnknownKey& b) { return rank[a.key] < rank[b.key]; });
  }

  void checkIds() const {
    std::map<std::pair<RecordKind, std::int64_t>, int> seen;
    for (const Mention& id : ids_) {
      const auto [first, fresh] = seen.emplace(std::pair(id.kind, id.id), id.line);
      if (fresh) continue;
      throw Refused(say(kDuplicateId, name_, std::int64_t{id.line}, id.path,
                        std::string(recordType(id.kind).name), id.id, std::int64_t{first->second}));
    }
  }

  void checkReferences() const {
    std::set<std::pair<RecordKind, std::int64_t>> known;
    for (const Mention& id : ids_) known.emplace(id.kind, id.id);
    for (const Mention& reference : references_) {
      if (known.count({reference.kind, reference.id}) != 0) continue;
      throw Refused(say(kDangling, name_, std::int64_t{reference.line}, reference.path,
                        std::string(recordType(reference.kind).name), reference.id));
    }
  }

  template <class Entity>
  static void sortById(std::vector<Shared<Entity>>& list) {
    std::sort(list.begin(), list.end(),
              [](const Shared<Entity>& a, const Shared<Entity>& b) { return a->id < b->id; });
  }

  const std::string& name_;
  std::vector<Message>& notes_;
  double lines_;
  const Watch& watch_;
  std::vector<Mention> ids_;
  std::vector<Mention> references_;
  std::int64_t keptKeys_ = 0;
  std::int64_t keptWords_ = 0;
  std::string firstKey_;
  std::string firstWord_;
};

}  // namespace

Result<ReadPlan> readPlan(std::string_view text, const std::string& name, const ReadLimits& limits,
                          const Watch& watch) {
  // The text becomes a tree in about two thirds of the time, the tree a plan in the rest.
  constexpr double kTree = 0.65;
  const Watch treeWatch = [&](double share) { return goesOn(watch, kTree * share); };
  const Watch planWatch = [&](double share) { return goesOn(watch, kTree + (1.0 - kTree) * share); };
  try {
    auto tree = json::parse(text, name, limits, treeWatch);
    if (!tree) return tree.refusal();
    ReadPlan out;
    const auto lines = static_cast<double>(1 + std::count(text.begin(), text.end(), '\n'));
    out.plan = Reader(name, out.notes, lines, planWatch).read(tree.value());
    return out;
  } catch (const Refused& refused) {
    return refused.message;
  } catch (const std::bad_alloc&) {
    return say(kTooLittleMemory, name);
  }
}

}  // namespace stayalight
