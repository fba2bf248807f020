// Leg and neutral currents against ngspice (Debian package), an independent solver of the same network: ideal
// sources, constant-power loads as the impedances they are at nominal volts.

#include <gtest/gtest.h>

#include <unistd.h>

#include <array>
#include <complex>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <numbers>
#include <sstream>

#include "core/use/use.h"

namespace stayalight {
namespace {

using Complex = std::complex<double>;

struct Network {
  const char* name;
  ComplexPower l1, l2, between;
  SystemVoltages system;
};

void writeImpedance(std::ostream& out, const char* label, const char* from, const char* to,
                    const ComplexPower& power, double volts) {
  const Complex z = volts * volts / std::conj(Complex(power.real.count(), power.reactive.count()));
  const double henries = z.imag() / (2 * std::numbers::pi * 60);
  out << "R" << label << " " << from << " m" << label << " " << z.real() << "\n";
  out << "L" << label << " m" << label << " " << to << " " << henries << "\n";
}

/// Magnitudes of line 1, line 2 and neutral.
std::array<double, 3> simulate(const Network& network) {
  const std::filesystem::path folder = std::filesystem::temp_directory_path();
  const std::string base =
      (folder / ("stayalight_legs_" + std::to_string(::getpid()) + "_" + network.name)).string();
  const double angle = !network.system.wye                         ? 180.0
                       : network.system.order == WyeOrder::l2Leads ? 120.0
                                                                   : -120.0;
  // The exact line-to-line volts of the two sources; 208 V is 120 times the root of three, rounded.
  const double between = network.system.wye ? 120 * std::numbers::sqrt3 : 240.0;
  {
    std::ofstream net(base + ".cir");
    net.precision(15);
    net << "legs\nV1 p1 0 AC 120 0\nV2 p2 0 AC 120 " << angle << "\nVN n 0 AC 0 0\n";
    writeImpedance(net, "a", "p1", "n", network.l1, 120);
    writeImpedance(net, "b", "p2", "n", network.l2, 120);
    writeImpedance(net, "c", "p1", "p2", network.between, between);
    net << ".ac lin 1 60 60\n.control\nset numdgt=10\nrun\nprint mag(i(V1)) mag(i(V2)) "
           "mag(i(VN))\nquit\n.endc\n.end\n";
  }
  const std::string command =
      std::string(NGSPICE_PROGRAM) + " -b '" + base + ".cir' > '" + base + ".out' 2>&1";
  const int status = std::system(command.c_str());
  std::ifstream in(base + ".out");
  std::stringstream text;
  text << in.rdbuf();
  std::filesystem::remove(base + ".cir");
  std::filesystem::remove(base + ".out");
  EXPECT_EQ(status, 0) << text.str();
  std::array<double, 3> out{-1, -1, -1};
  const char* labels[] = {"mag(i(v1)) = ", "mag(i(v2)) = ", "mag(i(vn)) = "};
  for (std::size_t i = 0; i < 3; ++i) {
    const std::size_t at = text.str().find(labels[i]);
    if (at == std::string::npos)
      ADD_FAILURE() << text.str();
    else
      out[i] = std::strtod(text.str().c_str() + at + std::string(labels[i]).size(), nullptr);
  }
  return out;
}

TEST(LegsAgainstNgspice, UnequalLegsAndPowerFactors) {
  const SystemVoltages split{};
  const SystemVoltages lagging{AcVolts(120), AcVolts(208), true, WyeOrder::l2Lags, false};
  const SystemVoltages leading{AcVolts(120), AcVolts(208), true, WyeOrder::l2Leads, false};
  const auto power = [](double watts, double pf) { return complexPower(Watts(watts), Fraction(pf)); };
  const Network rows[] = {
      {"split", power(2400, 0.98), power(700, 0.6), power(1900, 0.75), split},
      {"lagging", power(2400, 0.98), power(700, 0.6), power(1900, 0.75), lagging},
      {"leading", power(300, 0.55), power(1800, 0.95), power(3000, 0.85), leading},
  };
  for (const Network& row : rows) {
    LegPower sum = onLegs(row.l1, Connection::lineToNeutral, Leg::l1, row.system);
    sum += onLegs(row.l2, Connection::lineToNeutral, Leg::l2, row.system);
    sum += onLegs(row.between, Connection::lineToLine, Leg::l1, row.system);
    const Currents ours = currents(sum, row.system);
    const std::array<double, 3> theirs = simulate(row);
    EXPECT_NEAR(ours.legMagnitude(Leg::l1).count(), theirs[0], 1e-5 * theirs[0]) << row.name;
    EXPECT_NEAR(ours.legMagnitude(Leg::l2).count(), theirs[1], 1e-5 * theirs[1]) << row.name;
    EXPECT_NEAR(ours.neutralMagnitude().count(), theirs[2], 1e-5 * theirs[2]) << row.name;
  }
}

}  // namespace
}  // namespace stayalight
