#include "ui/style/palette.h"

#include <algorithm>
#include <cmath>

namespace stayalight {
namespace {

struct Row {
  ColorRole role;
  std::array<QRgb, 3> value;  // light, dark, high contrast
};

constexpr std::array<Row, kColorRoleCount> kColors = {{
    {ColorRole::window, {0xF1F0EB, 0x14181B, 0xFFFFFF}},
    {ColorRole::sheet, {0xFBFAF7, 0x1B2024, 0xFFFFFF}},
    {ColorRole::box, {0xC6CCCB, 0x30383D, 0xFFFFFF}},
    {ColorRole::cell, {0xF4F6F5, 0x2D3439, 0xFFFFFF}},
    {ColorRole::freeSpace, {0xE6EAE9, 0x20262A, 0xFFFFFF}},
    {ColorRole::movedAway, {0xE4E8E7, 0x242A2F, 0xFFFFFF}},
    {ColorRole::spine, {0xD6DCDB, 0x2B3237, 0xFFFFFF}},
    {ColorRole::gap, {0xDCE1E0, 0x181D20, 0xFFFFFF}},
    {ColorRole::lit, {0xFFF1C4, 0x4B3D14, 0xFFE27A}},
    {ColorRole::litEdge, {0xF2D27A, 0x7A621C, 0xC79A00}},
    {ColorRole::lamp, {0x8A6306, 0xE0B13C, 0x5C4300}},
    {ColorRole::lampInk, {0x6B4E00, 0xFFDD85, 0x3D2C00}},
    {ColorRole::ink, {0x1B2228, 0xECEAE4, 0x000000}},
    {ColorRole::ink2, {0x3C464F, 0xC3C9CD, 0x000000}},
    {ColorRole::ink3, {0x4C555D, 0xA3ABB1, 0x2B2B2B}},
    {ColorRole::hairline, {0xD9D7CF, 0x2C3338, 0x6B6B6B}},
    {ColorRole::edge, {0x7C7D76, 0x828C94, 0x000000}},
    {ColorRole::boxEdge, {0xAEB6B5, 0x414B51, 0x000000}},
    {ColorRole::track, {0xE3E2DB, 0x3A4146, 0xD9D9D9}},
    {ColorRole::body, {0x39424A, 0x0E1214, 0x000000}},
    {ColorRole::bodyEdge, {0x39424A, 0x8B959D, 0x000000}},
    {ColorRole::bodyInk, {0xFFFFFF, 0xFFFFFF, 0xFFFFFF}},
    {ColorRole::knob, {0xF4F6F5, 0xD5DADD, 0xFFFFFF}},
    {ColorRole::plate, {0x39424A, 0x0E1214, 0x000000}},
    {ColorRole::plateInk, {0xF4F1E6, 0xECEAE4, 0xFFFFFF}},
    {ColorRole::plateFact, {0xC9CFD2, 0xC3C9CD, 0xFFFFFF}},
    {ColorRole::hatch, {0xB7BDBD, 0x3B444A, 0x9A9A9A}},
    {ColorRole::leg1, {0x23456B, 0x93BDEB, 0x00275C}},
    {ColorRole::leg2, {0x8F3320, 0xF29C86, 0x8C1600}},
    {ColorRole::ground, {0x2B7A4B, 0x72C996, 0x00531F}},
    {ColorRole::danger, {0xA5103C, 0xFF8BA1, 0x8F0030}},
    {ColorRole::mustFix, {0xA65100, 0xFFAE5C, 0x7A3B00}},
    {ColorRole::check, {0x5A4A9C, 0xBBACFF, 0x3A2690}},
    {ColorRole::advice, {0x5A646C, 0xAEB7BE, 0x000000}},
    {ColorRole::night, {0xE7E6E1, 0x101316, 0xE2E2E2}},
    {ColorRole::cellRule, {0xDCE1E0, 0x181D20, 0x6B6B6B}},
    {ColorRole::paper, {0xFFFFFF, 0xFFFFFF, 0xFFFFFF}},
}};

constexpr bool inOrder() {
  for (std::size_t i = 0; i < kColors.size(); ++i) {
    if (static_cast<std::size_t>(kColors[i].role) != i) return false;
  }
  return true;
}
static_assert(inOrder(), "the rows stand in the order of the roles");

// Texts, marks and edges with each ground they are drawn on.
constexpr ColorPair kPairs[] = {
    {ColorRole::ink, ColorRole::window},
    {ColorRole::ink, ColorRole::sheet},
    {ColorRole::ink, ColorRole::box},
    {ColorRole::ink, ColorRole::cell},
    {ColorRole::ink, ColorRole::lit},
    {ColorRole::ink, ColorRole::freeSpace},
    {ColorRole::ink2, ColorRole::window},
    {ColorRole::ink2, ColorRole::sheet},
    {ColorRole::ink2, ColorRole::box},
    {ColorRole::ink2, ColorRole::cell},
    {ColorRole::ink2, ColorRole::lit},
    {ColorRole::ink2, ColorRole::freeSpace},
    {ColorRole::ink2, ColorRole::movedAway},
    {ColorRole::ink3, ColorRole::window},
    {ColorRole::ink3, ColorRole::sheet},
    {ColorRole::ink3, ColorRole::box},
    {ColorRole::ink3, ColorRole::cell},
    {ColorRole::ink3, ColorRole::freeSpace},
    {ColorRole::ink3, ColorRole::movedAway},
    {ColorRole::lampInk, ColorRole::lit},
    {ColorRole::lampInk, ColorRole::movedAway},
    {ColorRole::bodyInk, ColorRole::body},
    {ColorRole::plateInk, ColorRole::plate},
    {ColorRole::plateFact, ColorRole::plate},
    {ColorRole::leg1, ColorRole::spine},
    {ColorRole::leg2, ColorRole::spine},
    {ColorRole::leg1, ColorRole::box},
    {ColorRole::leg2, ColorRole::box},
    {ColorRole::leg1, ColorRole::sheet},
    {ColorRole::leg2, ColorRole::sheet},
    {ColorRole::ground, ColorRole::sheet},
    {ColorRole::danger, ColorRole::box},
    {ColorRole::danger, ColorRole::sheet},
    {ColorRole::danger, ColorRole::lit},
    {ColorRole::mustFix, ColorRole::window},
    {ColorRole::mustFix, ColorRole::sheet},
    {ColorRole::check, ColorRole::lit},
    {ColorRole::check, ColorRole::sheet},
    {ColorRole::advice, ColorRole::sheet},
    {ColorRole::ink, ColorRole::night},
    {ColorRole::ink2, ColorRole::night},
    {ColorRole::ink3, ColorRole::night},
    {ColorRole::lampInk, ColorRole::night, false},
    {ColorRole::lamp, ColorRole::night, false},
    {ColorRole::leg1, ColorRole::night, false},
    {ColorRole::leg2, ColorRole::night, false},
    {ColorRole::lamp, ColorRole::box, false},
    {ColorRole::lamp, ColorRole::sheet, false},
    {ColorRole::lamp, ColorRole::freeSpace, false},
    {ColorRole::lamp, ColorRole::movedAway, false},
    {ColorRole::lamp, ColorRole::window, false},
    {ColorRole::edge, ColorRole::freeSpace, false},
    {ColorRole::edge, ColorRole::sheet, false},
    {ColorRole::edge, ColorRole::window, false},
    {ColorRole::bodyEdge, ColorRole::cell, false},
    {ColorRole::bodyEdge, ColorRole::lit, false},
    {ColorRole::knob, ColorRole::body, false},
    {ColorRole::mustFix, ColorRole::cell, false},
    {ColorRole::mustFix, ColorRole::lit, false},
    {ColorRole::danger, ColorRole::cell, false},
    {ColorRole::danger, ColorRole::freeSpace, false},
    {ColorRole::mustFix, ColorRole::freeSpace, false},
    {ColorRole::ink2, ColorRole::track, false},
};

double linear(int channel) {
  const double c = channel / 255.0;
  return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}
double luminance(const QColor& c) {
  return 0.2126 * linear(c.red()) + 0.7152 * linear(c.green()) + 0.0722 * linear(c.blue());
}

}  // namespace

QColor Palette::color(ColorRole role) const {
  return QColor::fromRgb(kColors[static_cast<std::size_t>(role)].value[static_cast<std::size_t>(theme_)]);
}

QPalette widgetPalette(const Palette& palette) {
  const auto c = [&](ColorRole role) { return palette.color(role); };
  QPalette out;
  out.setColor(QPalette::Window, c(ColorRole::window));
  out.setColor(QPalette::WindowText, c(ColorRole::ink));
  out.setColor(QPalette::Base, palette.theme() == Theme::light ? QColor(Qt::white) : c(ColorRole::sheet));
  out.setColor(QPalette::AlternateBase, c(ColorRole::window));
  out.setColor(QPalette::Text, c(ColorRole::ink));
  out.setColor(QPalette::Button, c(ColorRole::sheet));
  out.setColor(QPalette::ButtonText, c(ColorRole::ink));
  out.setColor(QPalette::BrightText, c(ColorRole::danger));
  out.setColor(QPalette::Light, c(ColorRole::sheet));
  out.setColor(QPalette::Midlight, c(ColorRole::hairline));
  out.setColor(QPalette::Mid, c(ColorRole::edge));
  out.setColor(QPalette::Dark, c(ColorRole::edge));
  out.setColor(QPalette::Shadow, c(ColorRole::ink));
  out.setColor(QPalette::Highlight, c(ColorRole::ink));
  out.setColor(QPalette::HighlightedText, c(ColorRole::sheet));
  out.setColor(QPalette::Link, c(ColorRole::lampInk));
  out.setColor(QPalette::LinkVisited, c(ColorRole::lampInk));
  out.setColor(QPalette::ToolTipBase, c(ColorRole::sheet));
  out.setColor(QPalette::ToolTipText, c(ColorRole::ink));
  out.setColor(QPalette::PlaceholderText, c(ColorRole::ink3));
  for (const QPalette::ColorRole role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText}) {
    out.setColor(QPalette::Disabled, role, c(ColorRole::ink3));
  }
  out.setColor(QPalette::Disabled, QPalette::Base, c(ColorRole::window));
  out.setColor(QPalette::Disabled, QPalette::Highlight, c(ColorRole::hairline));
  out.setColor(QPalette::Disabled, QPalette::HighlightedText, c(ColorRole::ink3));
  return out;
}

double contrast(const QColor& a, const QColor& b) {
  const double la = luminance(a), lb = luminance(b);
  return (std::max(la, lb) + 0.05) / (std::min(la, lb) + 0.05);
}

std::span<const ColorPair> colorPairs() { return kPairs; }

}  // namespace stayalight
