#include <algorithm>
#include <cmath>

#include "core/use/cumulative.h"

namespace stayalight {
namespace {

// Ends of the lattice that no answer can see are cut off: it stays short, and no value becomes denormal.
constexpr double kNothing = 1e-24;
// Rounding of the sums must not push a quantile to the next step.
constexpr double kSlack = 1e-12;

// out[i] = in[i] (1 - q) + in[i - s] q; two arrays, so that the compiler may use wide registers.
void mix(const double* __restrict in, double* __restrict out, std::size_t n, std::size_t s, double q) {
  const double off = 1.0 - q;
  const std::size_t low = std::min(n, s);
  for (std::size_t i = 0; i < low; ++i) out[i] = in[i] * off;
  for (std::size_t i = n; i < s; ++i) out[i] = 0.0;
  const double* __restrict shifted = in;
  for (std::size_t i = s; i < n; ++i) out[i] = in[i] * off + shifted[i - s] * q;
  for (std::size_t i = std::max(n, s); i < n + s; ++i) out[i] = in[i - s] * q;
}

}  // namespace

std::size_t Distribution::steps(double share, double step) {
  return share > 0.0 ? static_cast<std::size_t>(std::ceil(share / step - 1e-9)) : 0;
}

void Distribution::add(double share, double probabilityOn) {
  const std::size_t s = steps(share, step_);
  const double q = std::clamp(probabilityOn, 0.0, 1.0);
  if (s == 0 || q <= 0.0) return;
  if (q >= 1.0) {
    lowest_ += s;
    return;
  }
  thread_local std::vector<double> next;
  next.resize(p_.size() + s);
  mix(p_.data(), next.data(), p_.size(), s, q);
  std::size_t first = 0;
  std::size_t last = next.size();
  while (last > first + 1 && next[last - 1] < kNothing) --last;
  while (first + 1 < last && next[first] < kNothing) ++first;
  next.resize(last);
  if (first == 0)
    p_.swap(next);
  else
    p_.assign(next.begin() + static_cast<std::ptrdiff_t>(first), next.end());
  lowest_ += first;
}

double Distribution::quantile(double q) const {
  double below = 0.0;
  for (std::size_t i = 0; i < p_.size(); ++i) {
    below += p_[i];
    if (below >= q - kSlack) return static_cast<double>(lowest_ + i) * step_;
  }
  return static_cast<double>(lowest_ + p_.size() - 1) * step_;
}

double Distribution::probabilityOver(double limit) const {
  // From the top: the small tail is summed without the rounding of the large body.
  double above = 0.0;
  for (std::size_t i = p_.size(); i-- > 0;) {
    if (static_cast<double>(lowest_ + i) * step_ <= limit + step_ * 1e-9) break;
    above += p_[i];
  }
  return above;
}

double Distribution::probabilityWithin(double low, double high) const {
  double within = 0.0;
  const double slack = step_ * 1e-9;
  for (std::size_t i = 0; i < p_.size(); ++i) {
    const double x = static_cast<double>(lowest_ + i) * step_;
    if (x > low + slack && x <= high + slack) within += p_[i];
  }
  return within;
}

Cumulative::Cumulative(const Distribution& distribution)
    : step_(distribution.step()), lowest_(static_cast<Step>(distribution.lowest())) {
  const std::vector<double>& p = distribution.probabilities();
  upTo_.resize(p.size());
  above_.resize(p.size());
  double sum = 0.0;
  for (std::size_t i = 0; i < p.size(); ++i) upTo_[i] = sum += p[i];
  sum = 0.0;
  for (std::size_t i = p.size(); i-- > 0; sum += p[i]) above_[i] = sum;
}

Cumulative::Step Cumulative::stepOf(double limit) const {
  return static_cast<Step>(std::floor(limit / step_ + 1e-9));
}

double Cumulative::upTo(Step x) const {
  if (x < lowest_) return 0.0;
  return x >= end() ? 1.0 : upTo_[static_cast<std::size_t>(x - lowest_)];
}

double Cumulative::above(Step x) const {
  if (x < lowest_) return 1.0;
  return x >= end() ? 0.0 : above_[static_cast<std::size_t>(x - lowest_)];
}

// X = O + w B with B on by chance q: F(x) = (1 - q) G(x) + q G(x - w). Solved for G from the end where it is
// known, in the direction in which rounding does not grow.
double Cumulative::upToWithout(Step x, Step w, double q) const {
  if (w == 0 || q <= 0.0) return upTo(x);
  if (q >= 1.0) return upTo(x + w);
  if (q > 0.5) return 1.0 - aboveWithout(x, w, q);
  double g = 0.0;
  for (Step t = x - (x - lowest_) / w * w; t <= x; t += w) {
    if (t >= lowest_) g = (upTo(t) - q * g) / (1.0 - q);
  }
  return std::clamp(g, 0.0, 1.0);
}

double Cumulative::aboveWithout(Step x, Step w, double q) const {
  if (w == 0 || q <= 0.0) return above(x);
  if (q >= 1.0) return above(x + w);
  if (q <= 0.5) {
    // T(x) = (1 - q) U(x) + q U(x - w), upwards from where U is 1.
    if (x < lowest_) return 1.0;
    double u = 1.0;
    for (Step t = x - (x - lowest_) / w * w; t <= x; t += w) u = (above(t) - q * u) / (1.0 - q);
    return std::clamp(u, 0.0, 1.0);
  }
  // Downwards from above the end, where nothing is left: U(t - w) = (T(t) - (1 - q) U(t)) / q.
  if (x >= end()) return 0.0;
  double u = 0.0;
  for (Step t = x + ((end() - x) / w + 1) * w; t > x; t -= w) u = (above(t) - (1.0 - q) * u) / q;
  return std::clamp(u, 0.0, 1.0);
}

double Cumulative::quantile(double q) const {
  const auto at = std::lower_bound(upTo_.begin(), upTo_.end(), q - kSlack);
  const Step i = std::min<Step>(at - upTo_.begin(), static_cast<Step>(upTo_.size()) - 1);
  return static_cast<double>(lowest_ + i) * step_;
}

double Cumulative::quantileWithout(double share, double probabilityOn, double q) const {
  const auto w = static_cast<Step>(Distribution::steps(share, step_));
  const double on = std::clamp(probabilityOn, 0.0, 1.0);
  if (w == 0 || on <= 0.0) return quantile(q);
  // The quantile lies no more than the share below that of the whole sum.
  Step high = static_cast<Step>(std::llround(quantile(q) / step_));
  Step low = std::max<Step>(0, high - w);
  while (low < high) {
    const Step middle = low + (high - low) / 2;
    if (upToWithout(middle, w, on) >= q - kSlack)
      high = middle;
    else
      low = middle + 1;
  }
  return static_cast<double>(high) * step_;
}

double Cumulative::probabilityCarriedOver(double limit, double share, double probabilityOn) const {
  const auto w = static_cast<Step>(Distribution::steps(share, step_));
  const double on = std::clamp(probabilityOn, 0.0, 1.0);
  const Step most = stepOf(limit);
  return std::max(0.0, aboveWithout(most - w, w, on) - aboveWithout(most, w, on));
}

Cumulative Cumulative::without(double share, double probabilityOn) const {
  const auto w = static_cast<Step>(Distribution::steps(share, step_));
  const double q = std::clamp(probabilityOn, 0.0, 1.0);
  Cumulative out = *this;
  if (w == 0 || q <= 0.0) return out;
  if (q >= 1.0) {
    out.lowest_ -= w;
    return out;
  }
  const auto n = static_cast<Step>(upTo_.size());
  if (q <= 0.5) {
    for (Step i = 0; i < n; ++i) {
      const auto k = static_cast<std::size_t>(i);
      const bool reaches = i >= w;
      out.upTo_[k] =
          (upTo_[k] - (reaches ? q * out.upTo_[static_cast<std::size_t>(i - w)] : 0.0)) / (1.0 - q);
      out.above_[k] =
          (above_[k] - q * (reaches ? out.above_[static_cast<std::size_t>(i - w)] : 1.0)) / (1.0 - q);
    }
  } else {
    for (Step i = n - 1; i >= 0; --i) {
      // U(i) = (T(i + w) - (1 - q) U(i + w)) / q
      const auto k = static_cast<std::size_t>(i);
      const bool inside = i + w < n;
      const auto up = static_cast<std::size_t>(inside ? i + w : n - 1);
      out.above_[k] = inside ? (above_[up] - (1.0 - q) * out.above_[up]) / q : 0.0;
      out.upTo_[k] = inside ? (upTo_[up] - (1.0 - q) * out.upTo_[up]) / q : 1.0;
    }
  }
  for (double& x : out.upTo_) x = std::clamp(x, 0.0, 1.0);
  for (double& x : out.above_) x = std::clamp(x, 0.0, 1.0);
  return out;
}

}  // namespace stayalight
