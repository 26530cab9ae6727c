// SPDX-License-Identifier: MIT
// Quantities that cannot be mixed up. Each holds one double in its SI unit; a Temperature (a point on the scale, held
// in degrees Celsius) and a TemperatureDifference (K) are two types, so 63 C + 2 K compiles and 63 C + 2 C does not.
#pragma once

#include <compare>

namespace holdwater::units {

template <class Tag>
class Quantity {
  public:
    constexpr Quantity() = default;
    constexpr explicit Quantity(double si) : si_(si) {}
    constexpr double si() const { return si_; }

    constexpr Quantity operator-() const { return Quantity{-si_}; }
    constexpr Quantity& operator+=(Quantity other) { return *this = *this + other; }
    constexpr Quantity& operator-=(Quantity other) { return *this = *this - other; }
    friend constexpr Quantity operator+(Quantity a, Quantity b) { return Quantity{a.si_ + b.si_}; }
    friend constexpr Quantity operator-(Quantity a, Quantity b) { return Quantity{a.si_ - b.si_}; }
    friend constexpr Quantity operator*(Quantity a, double factor) { return Quantity{a.si_ * factor}; }
    friend constexpr Quantity operator*(double factor, Quantity a) { return a * factor; }
    friend constexpr Quantity operator/(Quantity a, double divisor) { return Quantity{a.si_ / divisor}; }
    friend constexpr double operator/(Quantity a, Quantity b) { return a.si_ / b.si_; }
    friend constexpr auto operator<=>(Quantity a, Quantity b) = default;

  private:
    double si_ = 0.0;
};

using Length = Quantity<struct LengthTag>;                     // m
using Area = Quantity<struct AreaTag>;                         // m2
using Volume = Quantity<struct VolumeTag>;                     // m3
using Mass = Quantity<struct MassTag>;                         // kg
using Duration = Quantity<struct DurationTag>;                 // s
using TemperatureDifference = Quantity<struct DifferenceTag>;  // K
using Pressure = Quantity<struct PressureTag>;                 // Pa
using Energy = Quantity<struct EnergyTag>;                     // J
using HeatLoss = Quantity<struct HeatLossTag>;                 // W/K, the UA of a box
using HeatCapacity = Quantity<struct HeatCapacityTag>;         // J/K, of a whole thing
using Diffusivity = Quantity<struct DiffusivityTag>;           // m2/s
using Conductivity = Quantity<struct ConductivityTag>;         // W/(m K)
using FilmCoefficient = Quantity<struct FilmTag>;              // W/(m2 K)
using ThermalResistance = Quantity<struct ResistanceTag>;      // m2 K/W
using Density = Quantity<struct DensityTag>;                   // kg/m3
using SpecificHeat = Quantity<struct SpecificHeatTag>;         // J/(kg K)
using Fraction = Quantity<struct FractionTag>;                 // 0 to 1 for 0 to 100 %

/// A point on the temperature scale, held in degrees Celsius.
class Temperature {
  public:
    constexpr Temperature() = default;
    constexpr explicit Temperature(double celsius) : celsius_(celsius) {}
    constexpr double celsius() const { return celsius_; }
    constexpr double kelvin() const { return celsius_ + 273.15; }
    constexpr double fahrenheit() const { return celsius_ * 1.8 + 32.0; }

    friend constexpr Temperature operator+(Temperature t, TemperatureDifference d) {
        return Temperature{t.celsius_ + d.si()};
    }
    friend constexpr Temperature operator-(Temperature t, TemperatureDifference d) { return t + (-d); }
    friend constexpr TemperatureDifference operator-(Temperature a, Temperature b) {
        return TemperatureDifference{a.celsius_ - b.celsius_};
    }
    friend constexpr auto operator<=>(Temperature a, Temperature b) = default;

  private:
    double celsius_ = 0.0;
};

constexpr Temperature celsius(double v) {
    return Temperature{v};
}
constexpr Temperature fahrenheit(double v) {
    return Temperature{(v - 32.0) / 1.8};
}
constexpr TemperatureDifference kelvins(double v) {
    return TemperatureDifference{v};
}
constexpr Length metres(double v) {
    return Length{v};
}
constexpr Length millimetres(double v) {
    return Length{v * 1e-3};
}
constexpr Volume litres(double v) {
    return Volume{v * 1e-3};
}
constexpr Mass kilograms(double v) {
    return Mass{v};
}
constexpr Duration seconds(double v) {
    return Duration{v};
}
constexpr Duration minutes(double v) {
    return Duration{v * 60.0};
}
constexpr Duration hours(double v) {
    return Duration{v * 3600.0};
}

constexpr double in_millimetres(Length v) {
    return v.si() * 1e3;
}
constexpr double in_inches(Length v) {
    return v.si() / 0.0254;
}
constexpr double in_litres(Volume v) {
    return v.si() * 1e3;
}
constexpr double in_minutes(Duration v) {
    return v.si() / 60.0;
}
constexpr double in_hours(Duration v) {
    return v.si() / 3600.0;
}

}  // namespace holdwater::units
