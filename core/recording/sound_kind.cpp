// SPDX-License-Identifier: MIT
#include "core/recording/sound_kind.h"

#include <array>
#include <cstddef>
#include <string>

namespace stillbay {
namespace {

/// Bytes that a form of file begins with.
struct FormMark {
    std::size_t at;
    std::string_view bytes;
    const char* name;
};

using namespace std::string_view_literals;

constexpr std::array kOtherSounds{
    FormMark{4, "ftyp"sv, "MP4 or M4A"},
    FormMark{0, "ID3"sv, "MP3"},
    FormMark{0, "\xFF\xFB"sv, "MP3"},
    FormMark{0, "\xFF\xF3"sv, "MP3"},
    FormMark{0, "\xFF\xF2"sv, "MP3"},
    FormMark{0, "\xFF\xFA"sv, "MP3"},
    FormMark{0, "\xFF\xF1"sv, "AAC"},
    FormMark{0, "\xFF\xF9"sv, "AAC"},
    FormMark{0, "#!AMR"sv, "AMR"},
    FormMark{0, "\x1A\x45\xDF\xA3"sv, "WebM"},
    FormMark{0, "\x30\x26\xB2\x75"sv, "WMA"},
    FormMark{0, "caff\0"sv, "CAF"},
    FormMark{8, "AIFF"sv, "AIFF"},
    FormMark{8, "AIFC"sv, "AIFF"},
    FormMark{0, "RIFX"sv, "RIFX"},
};

}  // namespace

Result<SoundKind> soundKind(std::string_view head)
{
    if (head.starts_with("fLaC"))
        return SoundKind::Flac;
    if (head.starts_with("OggS"))
        return SoundKind::Ogg;
    if (head.starts_with("RIFF") || head.starts_with("RF64")) {
        if (head.size() >= 12 && head.substr(8, 4) != "WAVE")
            return fail(Errc::BadInput, phrase("this RIFF file holds no sound: save it as WAV"));
        return SoundKind::Wav;
    }
    for (const FormMark& form : kOtherSounds)
        if (head.size() > form.at && head.substr(form.at).starts_with(form.bytes))
            return fail(Errc::BadInput,
                        phrase("%1 is not read here: convert the sound to WAV or FLAC",
                               std::string(form.name)));
    if (head.starts_with("PK\x03\x04"))
        return fail(Errc::BadInput,
                    phrase("this is an archive or a spreadsheet: save the recording as CSV"));
    return SoundKind::None;
}

}  // namespace stillbay
