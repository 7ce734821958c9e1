// SPDX-License-Identifier: MIT
#include "tests/clip/film_generator.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <fstream>
#include <numbers>
#include <random>
#include <utility>

namespace stillbay {

namespace {

constexpr int kParts = 8;  // of an exposure
constexpr int kTaps = 8;
constexpr int kPhases = 2048;
using Kernel = std::array<float, kTaps>;

// A sinc under a Kaiser window: exact to some 1e-4 for what the scene holds.
std::vector<Kernel> sincKernels()
{
    std::vector<Kernel> kernels(kPhases + 1);
    const double beta = 6.0;
    for (int p = 0; p <= kPhases; ++p) {
        std::array<double, kTaps> taps{};
        double sum = 0.0;
        for (int k = 0; k < kTaps; ++k) {
            const double x = k - (kTaps / 2 - 1) - static_cast<double>(p) / kPhases;
            const double px = std::numbers::pi * x;
            const double edge = x / (kTaps / 2);
            const double window =
                std::abs(edge) >= 1.0
                    ? 0.0
                    : std::cyl_bessel_i(0.0, beta * std::sqrt(1.0 - edge * edge)) /
                          std::cyl_bessel_i(0.0, beta);
            taps[static_cast<std::size_t>(k)] =
                (std::abs(x) < 1e-12 ? 1.0 : std::sin(px) / px) * window;
            sum += taps[static_cast<std::size_t>(k)];
        }
        for (std::size_t k = 0; k < kTaps; ++k)
            kernels[static_cast<std::size_t>(p)][k] = static_cast<float>(taps[k] / sum);
    }
    return kernels;
}

struct Place {
    std::ptrdiff_t first;  // tap's column or row
    const Kernel* kernel;
};

Place placeOf(double x)
{
    static const std::vector<Kernel> kernels = sincKernels();
    const double low = std::floor(x);
    const auto phase = static_cast<std::size_t>((x - low) * kPhases + 0.5);
    return {static_cast<std::ptrdiff_t>(low) - (kTaps / 2 - 1), &kernels[phase]};
}

// A fast stream of nearly normal numbers.
class Noise {
public:
    explicit Noise(std::uint64_t seed) : m_state(seed * 0x9E3779B97F4A7C15ULL + 1) {}

    float next()
    {
        m_state ^= m_state << 13;
        m_state ^= m_state >> 7;
        m_state ^= m_state << 17;
        const std::uint64_t s = m_state;
        // Four numbers of 16 bits: variance 4/12 of a unit each.
        const auto sum =
            static_cast<float>((s & 0xFFFF) + (s >> 16 & 0xFFFF) + (s >> 32 & 0xFFFF) + (s >> 48));
        return (sum / 65536.0F - 2.0F) * 1.7320508F;
    }

private:
    std::uint64_t m_state;
};

double fade(double t)
{
    return t * t * t * (t * (6.0 * t - 15.0) + 10.0);
}

Stand sumOf(const Stand& a, const Stand& b, double share)
{
    return {a.across_px + share * b.across_px, a.up_px + share * b.up_px,
            a.roll_rad + share * b.roll_rad};
}

std::size_t marginOf(double reach)
{
    return static_cast<std::size_t>(std::ceil(reach)) + 2 * kTaps;
}

}  // namespace

FilmGenerator::FilmGenerator(FilmRecipe recipe) : m_recipe(std::move(recipe))
{
    const FilmRecipe& r = m_recipe;
    const double length = static_cast<double>(r.frames) / r.frameRate_hz + r.readout_s;
    double across = std::abs(r.driftPerSecond.across_px) * length + std::abs(r.sway.across_px);
    double up = std::abs(r.driftPerSecond.up_px) * length + std::abs(r.sway.up_px);
    double roll = std::abs(r.driftPerSecond.roll_rad) * length + std::abs(r.sway.roll_rad);
    across += std::abs(r.pan_px);
    for (const Shake& shake : r.shakes) {
        across += std::abs(shake.amplitude.across_px);
        up += std::abs(shake.amplitude.up_px);
        roll += std::abs(shake.amplitude.roll_rad);
    }
    m_marginX = marginOf(across + roll * static_cast<double>(r.height) / 2);
    m_marginY = marginOf(up + roll * static_cast<double>(r.width) / 2);
    for (std::size_t k = 0; k < r.frames; ++k)
        m_steady.push_back(steadyOf(k));
    for (std::size_t k = 0; k <= r.cuts.size(); ++k)
        m_scenes.push_back(drawScene(r.seed * 31 + static_cast<unsigned>(k),
                                     r.width + 2 * m_marginX, r.height + 2 * m_marginY));
    if (r.box)
        m_box = drawScene(r.seed * 31 + 1000, static_cast<std::size_t>(r.box->width_px) + kTaps,
                          static_cast<std::size_t>(r.box->height_px) + kTaps);
}

namespace {

std::vector<double> sampled(const std::function<double(double, double)>& scene, std::size_t width,
                            std::size_t height)
{
    std::vector<double> values;
    for (std::size_t y = 0; y < height; ++y)
        for (std::size_t x = 0; x < width; ++x)
            values.push_back(scene(static_cast<double>(x) + 0.5 - static_cast<double>(width) / 2,
                                   static_cast<double>(y) + 0.5 - static_cast<double>(height) / 2));
    return values;
}

// Patches and boxes of all sizes.
std::vector<double> patches(unsigned seed, std::size_t width, std::size_t height)
{
    std::mt19937 random(seed);
    std::uniform_real_distribution<double> uniform(-1.0, 1.0);
    std::vector<double> sum(width * height);
    // Octaves of smooth noise, half as strong for half the size.
    for (double size = 96.0; size > 2.5; size /= 2) {
        const auto columns = static_cast<std::size_t>(static_cast<double>(width) / size) + 2;
        const auto rows = static_cast<std::size_t>(static_cast<double>(height) / size) + 2;
        std::vector<double> lattice(columns * rows);
        for (double& value : lattice)
            value = uniform(random);
        const double strength = std::pow(size, 0.7);
        for (std::size_t y = 0; y < height; ++y) {
            const double v = static_cast<double>(y) / size;
            const auto j = static_cast<std::size_t>(v);
            const double fy = fade(v - static_cast<double>(j));
            for (std::size_t x = 0; x < width; ++x) {
                const double u = static_cast<double>(x) / size;
                const auto i = static_cast<std::size_t>(u);
                const double fx = fade(u - static_cast<double>(i));
                const double* const cell = &lattice[j * columns + i];
                sum[y * width + x] +=
                    strength * ((1 - fy) * ((1 - fx) * cell[0] + fx * cell[1]) +
                                fy * ((1 - fx) * cell[columns] + fx * cell[columns + 1]));
            }
        }
    }
    // Things with edges: slanted boxes, lighter or darker than what is behind them.
    const std::size_t things = width * height / 4000 + 3;
    for (std::size_t k = 0; k < things; ++k) {
        const double cx = (uniform(random) + 1) / 2 * static_cast<double>(width);
        const double cy = (uniform(random) + 1) / 2 * static_cast<double>(height);
        const double turn = uniform(random), a = 4 + 18 * std::abs(uniform(random)),
                     b = 4 + 18 * std::abs(uniform(random)), light = 14 * uniform(random);
        const double c = std::cos(turn), s = std::sin(turn), reach = a + b + 1;
        const auto from = [](double low) {
            return static_cast<std::size_t>(std::max(0.0, low));
        };
        for (std::size_t y = from(cy - reach); y < std::min(height, from(cy + reach)); ++y)
            for (std::size_t x = from(cx - reach); x < std::min(width, from(cx + reach)); ++x) {
                const double dx = static_cast<double>(x) - cx, dy = static_cast<double>(y) - cy;
                const double inside =
                    std::min(a - std::abs(c * dx + s * dy), b - std::abs(c * dy - s * dx));
                sum[y * width + x] += light * std::clamp(inside + 0.5, 0.0, 1.0);
            }
    }
    return sum;
}

}  // namespace

FilmGenerator::Picture FilmGenerator::drawScene(unsigned seed, std::size_t width,
                                                std::size_t height) const
{
    std::vector<double> sum =
        m_recipe.scene ? sampled(m_recipe.scene, width, height) : patches(seed, width, height);
    // The lens: a Gauss of 0.7 pixels, which leaves nothing that the kernels could not carry.
    constexpr double kLens_px = 0.7;
    std::array<double, 4> lens{};
    double total = 0.0;
    for (std::size_t k = 0; k < lens.size(); ++k) {
        lens[k] = std::exp(-0.5 * std::pow(static_cast<double>(k) / kLens_px, 2));
        total += k == 0 ? lens[k] : 2 * lens[k];
    }
    std::vector<double> softened(sum.size());
    const auto soften = [&](const std::vector<double>& in, std::vector<double>& out,
                            std::size_t step, std::size_t count, std::size_t index,
                            std::size_t at) {
        double value = lens[0] * in[at];
        for (std::size_t k = 1; k < lens.size(); ++k) {
            value += lens[k] * in[index >= k ? at - k * step : at];
            value += lens[k] * in[index + k < count ? at + k * step : at];
        }
        out[at] = value / total;
    };
    for (std::size_t y = 0; y < height; ++y)
        for (std::size_t x = 0; x < width; ++x)
            soften(sum, softened, 1, width, x, y * width + x);
    for (std::size_t y = 0; y < height; ++y)
        for (std::size_t x = 0; x < width; ++x)
            soften(softened, sum, width, height, y, y * width + x);

    double mean = 0.0, square = 0.0;
    for (const double value : sum) {
        mean += value;
        square += value * value;
    }
    const auto count = static_cast<double>(sum.size());
    mean /= count;
    const double scale = m_recipe.texture / std::sqrt(square / count - mean * mean);
    Picture picture{width, height, std::vector<float>(sum.size())};
    for (std::size_t k = 0; k < sum.size(); ++k)
        picture.values[k] = static_cast<float>(118.0 + scale * (sum[k] - mean));
    return picture;
}

double FilmGenerator::timeOf(std::size_t frame) const
{
    return static_cast<double>(frame) / m_recipe.frameRate_hz;
}

Stand FilmGenerator::standAt(double time_s) const
{
    const FilmRecipe& r = m_recipe;
    const double turn = 2 * std::numbers::pi;
    const double swing = std::sin(turn * r.sway_hz * time_s);
    const double middle = static_cast<double>(r.frames) / r.frameRate_hz / 2;
    Stand stand{r.driftPerSecond.across_px * (time_s - middle) + r.sway.across_px * swing,
                r.driftPerSecond.up_px * (time_s - middle) + r.sway.up_px * swing,
                r.driftPerSecond.roll_rad * (time_s - middle) + r.sway.roll_rad * swing};
    if (r.panTo_s > r.panFrom_s)
        stand.across_px -=
            r.pan_px *
            fade(std::clamp((time_s - r.panFrom_s) / (r.panTo_s - r.panFrom_s), 0.0, 1.0));
    for (const Shake& shake : r.shakes) {
        const double cycles = shake.frequency_hz * (shake.clock ? shake.clock(time_s) : time_s);
        stand.across_px +=
            shake.amplitude.across_px * std::cos(turn * (cycles + shake.phase.across_px));
        stand.up_px += shake.amplitude.up_px * std::cos(turn * (cycles + shake.phase.up_px));
        stand.roll_rad +=
            shake.amplitude.roll_rad * std::cos(turn * (cycles + shake.phase.roll_rad));
    }
    return stand;
}

Stand FilmGenerator::meanOf(std::ptrdiff_t frame) const
{
    constexpr int rows = 32;
    Stand mean;
    for (int k = 0; k < rows; ++k) {
        const double row = (k + 0.5) / rows - 0.5;
        mean = sumOf(
            mean,
            standAt(static_cast<double>(frame) / m_recipe.frameRate_hz + row * m_recipe.readout_s),
            1.0 / rows);
    }
    return mean;
}

Stand FilmGenerator::steadyOf(std::size_t frame) const
{
    const auto at = static_cast<std::ptrdiff_t>(frame);
    Stand steady = meanOf(at);
    if (m_recipe.steadied == Steadied::Not)
        return {};
    if (m_recipe.steadied == Steadied::Smoothed) {
        const auto half = static_cast<std::ptrdiff_t>(m_recipe.frameRate_hz / 2);
        for (std::ptrdiff_t k = -half; k <= half; ++k)
            steady = sumOf(steady, meanOf(at + k), -1.0 / static_cast<double>(2 * half + 1));
    }
    return steady;
}

Stand FilmGenerator::seenBy(std::size_t frame, double row) const
{
    const double middle = timeOf(frame) + row * m_recipe.readout_s;
    Stand mean;
    for (int k = 0; k < kParts; ++k) {
        const Stand stand =
            sumOf(standAt(middle + ((k + 0.5) / kParts - 0.5) * m_recipe.exposure_s),
                  m_steady[frame], -1.0);
        mean.across_px += stand.across_px / kParts;
        mean.up_px += stand.up_px / kParts;
        mean.roll_rad += stand.roll_rad / kParts;
    }
    return mean;
}

std::vector<std::uint8_t> FilmGenerator::frame(std::size_t index) const
{
    const FilmRecipe& r = m_recipe;
    std::size_t shot = 0;
    for (const std::size_t cut : r.cuts)
        shot += index >= cut ? 1 : 0;
    const Picture& scene = m_scenes[shot];
    const int parts = r.exposure_s > 0.0 ? kParts : 1;
    const auto halfWidth = static_cast<double>(r.width) / 2;
    Noise noise(r.seed * 100003ULL + index);
    std::vector<std::uint8_t> pixels(r.width * r.height);
    std::vector<float> line(r.width), column(r.width + kTaps + 1);
    for (std::size_t y = 0; y < r.height; ++y) {
        const double row = (static_cast<double>(y) + 0.5) / static_cast<double>(r.height) - 0.5;
        const double rowTime = timeOf(index) + row * r.readout_s;
        const double fromMiddle = row * static_cast<double>(r.height);  // downwards
        std::ranges::fill(line, 0.0F);
        for (int part = 0; part < parts; ++part) {
            const Stand stand =
                sumOf(standAt(rowTime + ((part + 0.5) / parts - 0.5) * r.exposure_s),
                      m_steady[index], -1.0);
            // A point at (x, y up) has moved by (−roll y, roll x) and the shift; sampled is where
            // the scene's point came from.
            const double right = stand.across_px + stand.roll_rad * fromMiddle;
            const Place across = placeOf(static_cast<double>(m_marginX) - right);
            for (std::size_t c = 0; c < column.size(); ++c) {
                // Of the column that tap 0 of pixel c reads, at the pixel where it counts.
                const double x = static_cast<double>(across.first) + static_cast<double>(c) -
                                 static_cast<double>(m_marginX) + right + 0.5 - halfWidth;
                const double down = -(stand.up_px + stand.roll_rad * x);
                const Place place = placeOf(static_cast<double>(y + m_marginY) - down);
                const float* from =
                    &scene.values[static_cast<std::size_t>(place.first) * scene.width +
                                  static_cast<std::size_t>(across.first) + c];
                float value = 0.0F;
                for (const float weight : *place.kernel) {
                    value += weight * *from;
                    from += scene.width;
                }
                column[c] = value;
            }
            for (std::size_t x = 0; x < r.width; ++x) {
                float value = 0.0F;
                for (std::size_t k = 0; k < kTaps; ++k)
                    value += (*across.kernel)[k] * column[x + k];
                line[x] += value / static_cast<float>(parts);
            }
        }
        if (r.box) {
            const double left =
                halfWidth + r.box->x_px + r.box->right_px_s * rowTime - r.box->width_px / 2;
            const double top = r.box->y_px + r.box->down_px_s * rowTime - r.box->height_px / 2;
            const double inside = fromMiddle - top;
            if (inside >= 0.0 && inside < r.box->height_px)
                for (std::size_t x = 0; x < r.width; ++x) {
                    const double u = static_cast<double>(x) - left;
                    if (u >= 0.0 && u < r.box->width_px)
                        line[x] =
                            40.0F + m_box.values[static_cast<std::size_t>(inside) * m_box.width +
                                                 static_cast<std::size_t>(u)];
                }
        }
        const double gain = r.gain ? r.gain(rowTime) : 1.0;
        const double offset = r.offset * static_cast<double>(index) / static_cast<double>(r.frames);
        for (std::size_t x = 0; x < r.width; ++x) {
            const float value = static_cast<float>(gain) * line[x] + static_cast<float>(offset) +
                                static_cast<float>(r.noise) * noise.next();
            pixels[y * r.width + x] =
                static_cast<std::uint8_t>(std::clamp(value + 0.5F, 0.0F, 255.0F));
        }
    }
    return pixels;
}

bool FilmGenerator::write(const std::filesystem::path& file) const
{
    std::ofstream out(file, std::ios::binary);
    for (std::size_t k = 0; k < m_recipe.frames; ++k) {
        const std::vector<std::uint8_t> pixels = frame(k);
        out.write(reinterpret_cast<const char*>(pixels.data()),
                  static_cast<std::streamsize>(pixels.size()));
    }
    return static_cast<bool>(out.flush());
}

}  // namespace stillbay
