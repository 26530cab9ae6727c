// SPDX-License-Identifier: MIT
#include "draw/night_view.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>

namespace holdwater::draw {

namespace {

/// Linear light of a channel [0 to 1]: sRGB decoding (IEC 61966-2-1).
double linear(int channel) {
    static const std::array<double, 256> table = [] {
        std::array<double, 256> made{};
        for (std::size_t i = 0; i < made.size(); ++i) {
            const double c = static_cast<double>(i) / 255.0;
            made[i] = c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
        }
        return made;
    }();
    return table[static_cast<std::size_t>(std::clamp(channel, 0, 255))];
}

int encoded(double light) {
    const double c = light <= 0.0031308 ? 12.92 * light : 1.055 * std::pow(light, 1.0 / 2.4) - 0.055;
    return static_cast<int>(std::lround(std::clamp(c, 0.0, 1.0) * 255.0));
}

/// One channel of the picture, blurred along a row or a column; the picture goes on beyond its edge as it ends there.
std::vector<double> blurred(const std::vector<double>& light, int width, int height, const std::vector<double>& weights,
                            bool along) {
    std::vector<double> made(light.size());
    const int reach = static_cast<int>(weights.size()) - 1;
    const auto at = [&](int x, int y) {
        return light[static_cast<std::size_t>(std::clamp(y, 0, height - 1)) * static_cast<std::size_t>(width) +
                     static_cast<std::size_t>(std::clamp(x, 0, width - 1))];
    };
    for (int y = 0; y < height; ++y) {
        for (int x = 0; x < width; ++x) {
            double sum = weights[0] * at(x, y);
            for (int k = 1; k <= reach; ++k) {
                const double both = along ? at(x - k, y) + at(x + k, y) : at(x, y - k) + at(x, y + k);
                sum += weights[static_cast<std::size_t>(k)] * both;
            }
            made[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x)] = sum;
        }
    }
    return made;
}

/// Half a bell from its middle on, whole sum 1.
std::vector<double> bell(double width_at_half) {
    const double sigma = width_at_half / (2.0 * std::sqrt(2.0 * std::numbers::ln2));
    if (!(sigma > 0.0)) {
        return {1.0};
    }
    const int reach = std::max(1, static_cast<int>(std::ceil(3.0 * sigma)));
    std::vector<double> weights;
    double sum = 0.0;
    for (int k = 0; k <= reach; ++k) {
        weights.push_back(std::exp(-0.5 * (k / sigma) * (k / sigma)));
        sum += (k == 0 ? 1.0 : 2.0) * weights.back();
    }
    for (double& weight : weights) {
        weight /= sum;
    }
    return weights;
}

}  // namespace

Colour under_red_lamp(Colour colour) {
    return {colour.red, 0, 0};
}

double contrast_under_red_lamp(Colour one, Colour other) {
    constexpr double glare = 0.05;
    const double a = linear(one.red) + glare;
    const double b = linear(other.red) + glare;
    return std::max(a, b) / std::min(a, b);
}

void put_under_red_lamp(Pixels& pixels) {
    std::transform(pixels.colours.begin(), pixels.colours.end(), pixels.colours.begin(), under_red_lamp);
}

void put_in_dim_light(Pixels& pixels, double blur_px, double contrast_share) {
    const auto weights = bell(blur_px);
    for (int Colour::*channel : {&Colour::red, &Colour::green, &Colour::blue}) {
        std::vector<double> light;
        light.reserve(pixels.colours.size());
        for (const Colour& colour : pixels.colours) {
            light.push_back(linear(colour.*channel));
        }
        light = blurred(light, pixels.width, pixels.height, weights, true);
        light = blurred(light, pixels.width, pixels.height, weights, false);
        for (std::size_t i = 0; i < light.size(); ++i) {
            pixels.colours[i].*channel = encoded(1.0 - contrast_share * (1.0 - light[i]));
        }
    }
}

}  // namespace holdwater::draw
