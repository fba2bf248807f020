#include <algorithm>

#include "core/file/tree.h"
#include "core/message/version.h"

namespace stayalight {
namespace {

using json::appendNumber;
using json::appendText;

/// Writes the members of one object: the known ones in their order, unknown ones behind the key they
/// followed.
class Members {
 public:
  Members(std::string& out, const std::vector<UnknownKey>& unknown, int indent, bool oneLine)
      : out_(out), unknown_(unknown), written_(unknown.size(), false), indent_(indent), oneLine_(oneLine) {
    out_ += '{';
    writeUnknownAfter("");
  }

  /// Begins a member; its value follows.
  void key(std::string_view key) {
    out_ += first_ ? "" : oneLine_ ? ", " : ",";
    if (!oneLine_) newLine(indent_ + 2);
    first_ = false;
    appendText(out_, key);
    out_ += ": ";
  }
  /// Unknown keys behind this one, whether it was written or had no value.
  void writeUnknownAfter(std::string_view key) {
    for (std::size_t i = 0; i < unknown_.size(); ++i) {
      if (!written_[i] && unknown_[i].after == key) writeUnknown(i);
    }
  }
  void close() {
    for (std::size_t i = 0; i < unknown_.size(); ++i) {
      if (!written_[i]) writeUnknown(i);
    }
    if (!oneLine_ && !first_) newLine(indent_);
    out_ += '}';
  }
  [[nodiscard]] int indent() const { return indent_ + 2; }

 private:
  void newLine(int indent) {
    out_ += '\n';
    out_.append(static_cast<std::size_t>(indent), ' ');
  }
  void writeUnknown(std::size_t i) {
    written_[i] = true;
    key(unknown_[i].key);
    out_ += unknown_[i].json;
    writeUnknownAfter(unknown_[i].key);
  }

  std::string& out_;
  const std::vector<UnknownKey>& unknown_;
  std::vector<bool> written_;
  int indent_;
  bool oneLine_;
  bool first_ = true;
};

void writeFact(std::string& out, const FactValue& fact) {
  // A grade of a later program is kept as an unknown key, until somebody chooses one of ours.
  std::vector<UnknownKey> unknown;
  std::string grade;
  for (const UnknownKey& key : fact.unknown) {
    if (key.key != "grade")
      unknown.push_back(key);
    else if (fact.grade == Grade::unknown)
      grade = key.json;
  }
  if (grade.empty()) appendText(grade, kGradeWords[static_cast<std::size_t>(fact.grade)]);

  Members members(out, unknown, 0, true);
  const auto number = [&](std::string_view key, const std::optional<double>& value) {
    if (value) {
      members.key(key);
      appendNumber(out, *value);
    }
    members.writeUnknownAfter(key);
  };
  const auto text = [&](std::string_view key, const std::string& value) {
    if (!value.empty()) {
      members.key(key);
      appendText(out, value);
    }
    members.writeUnknownAfter(key);
  };
  number("value", fact.value);
  members.key("grade");
  out += grade;
  members.writeUnknownAfter("grade");
  number("low", fact.low);
  number("high", fact.high);
  text("who", fact.who);
  text("when", fact.when);
  text("how", fact.how);
  members.close();
}

struct WriteValue {
  std::string& out;
  void operator()(NoValue) const { out += "null"; }
  void operator()(bool value) const { out += value ? "true" : "false"; }
  void operator()(std::int64_t value) const { out += std::to_string(value); }
  void operator()(double value) const { appendNumber(out, value); }
  void operator()(const std::string& value) const { appendText(out, value); }
  void operator()(const FactValue& value) const { writeFact(out, value); }
};

bool empty(const FieldValue& value) {
  if (std::holds_alternative<NoValue>(value)) return true;
  const auto* fact = std::get_if<FactValue>(&value);
  return fact != nullptr && *fact == FactValue{};
}

void writeFields(std::string& out, const RecordType& type, const void* record, Members& members);

void writeRecord(std::string& out, RecordKind kind, const void* record, int indent) {
  const RecordType& type = recordType(kind);
  Members members(out, type.unknown(record), indent, isRow(kind));
  writeFields(out, type, record, members);
  members.close();
}

void writeChildren(std::string& out, const Children& children, const void* record, int indent) {
  if (children.single) {
    writeRecord(out, children.kind, children.at(record, 0), indent);
    return;
  }
  const std::size_t count = children.count(record);
  const std::string pad(static_cast<std::size_t>(indent), ' ');
  out += '[';
  for (std::size_t i = 0; i < count; ++i) {
    out += (i > 0 ? ",\n" : "\n") + pad + "  ";
    writeRecord(out, children.kind, children.at(record, i), indent + 2);
  }
  if (count > 0) out += '\n' + pad;
  out += ']';
}

void writeFields(std::string& out, const RecordType& type, const void* record, Members& members) {
  for (const Field& field : type.fields) {
    const FieldValue value = field.get(record);
    if (!empty(value)) {
      members.key(field.key);
      std::visit(WriteValue{out}, value);
    }
    members.writeUnknownAfter(field.key);
  }
  for (const Children& children : type.children) {
    members.key(children.key);
    writeChildren(out, children, record, members.indent());
    members.writeUnknownAfter(children.key);
  }
}

void writeHeader(std::string& out, const FileHeader& header) {
  Members members(out, header.unknown, 0, true);
  members.key("format");
  out += std::to_string(kFormat);
  members.writeUnknownAfter("format");
  members.key("level");
  out += std::to_string(std::max(kLevel, header.level));
  members.writeUnknownAfter("level");
  members.key("program");
  appendText(out, kVersion);
  members.writeUnknownAfter("program");
  members.close();
}

}  // namespace

std::string writePart(const Plan& plan, std::span<const std::string_view> parts) {
  std::string out;
  const std::vector<UnknownKey> none;
  Members members(out, none, 0, false);
  members.key("stayalight");
  writeHeader(out, plan.header);
  for (const Children& children : recordType(RecordKind::plan).children) {
    if (std::find(parts.begin(), parts.end(), children.key) == parts.end()) continue;
    members.key(children.key);
    writeChildren(out, children, &plan, members.indent());
  }
  members.close();
  out += '\n';
  return out;
}

std::string writePlan(const Plan& plan) {
  std::string out;
  Members members(out, plan.unknown, 0, false);
  members.key("stayalight");
  writeHeader(out, plan.header);
  members.writeUnknownAfter("stayalight");
  writeFields(out, recordType(RecordKind::plan), &plan, members);
  members.close();
  out += '\n';
  return out;
}

}  // namespace stayalight
