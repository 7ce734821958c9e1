// SPDX-License-Identifier: MIT
#include "core/clip/child_process.h"
#include "core/clip/decoder_tools.h"
#include "tests/recordings/sample_film.h"
#include "tests/recordings/true_reedbed.h"
#include "tests/recordings/write_sound.h"

#include <stdexcept>
#include <string>
#include <vector>

namespace stillbay::test {
namespace {

namespace fs = std::filesystem;

constexpr int kCrf = 18;
constexpr const char* kSoundBits = "12k";

// Each frame from those before it alone, as cameras code: one that is drawn from both sides has
// half the motion of each.
std::vector<std::string> coding(const FilmRecipe& recipe, const fs::path& frames,
                                const fs::path& sound, const fs::path& film)
{
    const std::string size = std::to_string(recipe.width) + "x" + std::to_string(recipe.height);
    const std::string rate = std::to_string(std::lround(recipe.frameRate_hz));
    return {"-nostdin",
            "-loglevel",
            "level+error",
            "-y",
            "-f",
            "rawvideo",
            "-pix_fmt",
            "gray",
            "-video_size",
            size,
            "-framerate",
            rate,
            "-i",
            "file:" + frames.string(),
            "-i",
            "file:" + sound.string(),
            "-c:v",
            "libx264",
            "-preset",
            "veryslow",
            "-tune",
            "psnr",
            "-bf",
            "0",
            "-g",
            "300",
            "-threads",
            "1",
            "-crf",
            std::to_string(kCrf),
            "-pix_fmt",
            "yuv420p",
            "-c:a",
            "aac",
            "-b:a",
            kSoundBits,
            "-fflags",
            "+bitexact",
            "-flags:v",
            "+bitexact",
            "-flags:a",
            "+bitexact",
            "-movflags",
            "+faststart",
            "-metadata",
            std::string("comment=") + kInvented,
            "file:" + film.string()};
}

void code(const std::vector<std::string>& arguments)
{
    const auto tools = findDecoderTools();
    if (!tools)
        throw std::runtime_error(english(tools.error().what));
    auto child = ChildProcess::start(tools->ffmpeg, arguments, errorsOnly);
    if (!child)
        throw std::runtime_error(english(child.error().what));
    const auto ending = child->finish(patienceOf(120, {}));
    if (!ending || !ending->isGood())
        throw std::runtime_error("ffmpeg: " + child->lastWords());
}

}  // namespace

void writeFilms(const Setup& reedbed, const fs::path& folder)
{
    const Setup craft = trueReedbed(reedbed);
    const fs::path frames = folder / "frames.raw", sound = folder / "film-sound.wav";
    for (const FilmedThrottle& held : kFilmedThrottles) {
        const SampleFilm film = sampleFilm(craft, held);
        if (!FilmGenerator(film.recipe).write(frames))
            throw std::runtime_error("cannot write " + frames.string());
        write(soundOf(film), sound, SoundForm::Wav);
        code(coding(film.recipe, frames, sound, folder / film.name()));
    }
    fs::remove(frames);
    fs::remove(sound);
}

}  // namespace stillbay::test
