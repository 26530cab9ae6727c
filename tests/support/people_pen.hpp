// SPDX-License-Identifier: MIT
// How people write a quantity into a trip file: by the tape and the scale that they have, rounded as they round.
#pragma once

#include <string>

namespace holdwater::support {

/// A value as it stands in the file, and what it then means.
struct Written {
    std::string text;  // in its quotes
    double value = 0;  // in the unit that went in
};

/// In metric units, or in those of the US.
class Pen {
  public:
    explicit Pen(bool us) : us_(us) {}

    bool us() const { return us_; }

    /// Whole millimetres up to 40, then every 5; quarters of an inch. Rounding never swaps two lengths.
    Written length(double mm) const;
    /// To 10 g, from 1 kg on to 50 g; ounces, from 2 lb on quarters of a pound.
    Written mass(double kg) const;
    /// To half a litre, never more than it is; quarts.
    Written litres(double l) const;
    /// What a cook pours in a cup or kettle: to 0.05 L, in litres under any system.
    Written sup(double l) const;
    /// Whole degrees.
    Written temperature(double c) const;
    /// To half a degree of one's own thermometer, as read off it.
    Written reading(double c) const;
    /// A difference, to half a kelvin.
    Written difference(double k) const;
    Written minutes(double min) const;
    Written metres(double m) const;

  private:
    bool us_;
};

}  // namespace holdwater::support
