// SPDX-License-Identifier: MIT
#include "tests/clip/clip_files.h"
#include "tests/commands/output_folder.h"

#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <limits>
#include <sys/stat.h>

namespace stillbay {
namespace {

std::string writeText(const std::string& file, const std::string& text)
{
    std::ofstream(file, std::ios::binary) << text;
    return file;
}

std::string bytesOf(const std::string& file)
{
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

std::string refusal(const std::string& file, const ClipOptions& options = {})
{
    return complaint(probeClip(file, options));
}

// Holds that what is no file of a film is refused in one sentence before anything is started.
TEST(BadClip, IsRefusedUnopened)
{
    const OutputFolder folder;
    EXPECT_EQ(refusal(folder.path("none.mp4")),
              "the film cannot be opened: No such file or directory");
    EXPECT_EQ(refusal(std::filesystem::path(folder.path()).parent_path()),
              "this is a folder: name one film in it");
    ASSERT_EQ(::mkfifo(folder.path("pipe").c_str(), 0600), 0);
    EXPECT_EQ(refusal(folder.path("pipe")), "this is no ordinary file: save the film first");
    EXPECT_EQ(refusal(writeText(folder.path("empty.mp4"), "")), "the file is empty");
    const std::string file = writeText(folder.path("film.mp4"), "x");
    EXPECT_EQ(refusal(file, {.from_s = 3, .to_s = 2}),
              "a part of a film begins at 0\u00A0s or later and ends after its beginning");
    EXPECT_EQ(refusal(file, {.from_s = -1}),
              "a part of a film begins at 0\u00A0s or later and ends after its beginning");
}

// Holds that missing programs are named with their package, and none is taken from a folder that
// depends on where one is.
TEST(BadClip, WithoutProgramsNamesThePackage)
{
    const OutputFolder folder;
    const std::string missing =
        "a film is read with the programs ffprobe and ffmpeg: install the package ffmpeg, then try "
        "again";
    makeScript(folder.path("ffprobe"), "exit 0");
    const std::string here = std::filesystem::path(folder.path()).parent_path().string();
    EXPECT_EQ(complaint(findDecoderTools(here)), missing);
    makeScript(folder.path("ffmpeg"), "exit 0");
    const auto found = findDecoderTools("/none:" + here);
    ASSERT_TRUE(found);
    EXPECT_EQ(found->ffmpeg, here + "/ffmpeg");
    std::filesystem::permissions(folder.path("ffmpeg"), std::filesystem::perms::owner_read);
    EXPECT_EQ(complaint(findDecoderTools(here)), missing);
    EXPECT_EQ(complaint(findDecoderTools(".::bin")), missing);
    EXPECT_EQ(complaint(findDecoderTools("")), missing);
}

// Holds what ffmpeg itself makes of files that are no film: a text, a list of other files, a
// picture and a sound under a film's name.
TEST(BadClip, OfAnotherKindIsRefused)
{
    const OutputFolder folder;
    const std::string text = writeText(folder.path("text.mp4"), "Seven gates stand open.\n");
    EXPECT_EQ(refusal(text),
              "the index of the film is missing: it was not finished, was not copied to "
              "its end, or is no film");
    const std::string otherKind =
        "this is a file of another kind, a picture for instance, and no film";
    const std::string list =
        writeText(folder.path("list.mkv"), "ffconcat version 1.0\nfile text.mp4\n");
    EXPECT_EQ(refusal(list), otherKind);
    const std::string picture = writeText(
        folder.path("picture.mov"),
        std::string("\x89PNG\r\n\x1A\n\0\0\0\x0DIHDR\0\0\0\x80\0\0\0\x80\x08\0\0\0\0", 29));
    EXPECT_EQ(refusal(picture), otherKind);
    const std::string sound =
        writeText(folder.path("sound.avi"),
                  std::string("RIFF\x2C\1\0\0WAVEfmt \x10\0\0\0\1\0\1\0\x40\x1F\0\0\x80\x3E\0\0"
                              "\2\0\x10\0data\0\1\0\0",
                              44) +
                      std::string(256, '\1'));
    EXPECT_EQ(refusal(sound), "there is sound in this file and no film");
    EXPECT_FALSE(hasChildren());
}

// Holds that a film cut short is read as far as it goes, and says so; without its index it is not.
TEST(BadClip, CutShortSaysHowFarItGoes)
{
    const OutputFolder folder;
    const std::string whole = folder.path("whole.mp4");
    makeClip(whole, {"-f", "lavfi", "-i", "testsrc2=s=128x96:r=25:d=2", "-c:v", "libx264",
                     "-preset", "ultrafast", "-movflags", "faststart"});
    const std::string bytes = bytesOf(whole);
    const std::string part = writeText(folder.path("part.mp4"), bytes.substr(0, bytes.size() / 2));
    const auto facts = probeClip(part);
    ASSERT_TRUE(facts) << complaint(facts);
    ASSERT_EQ(facts->warnings.size(), 1U);
    EXPECT_EQ(facts->warnings[0].code, "film_breaks_off");
    EXPECT_LT(facts->frameTime_s.size(), 40U);
    const WholeClip clip = wholeClip(part, *facts);
    EXPECT_FALSE(clip.error) << english(clip.error->what);
    EXPECT_GE(clip.time_s.size() + 3, facts->frameTime_s.size());
    EXPECT_NE(refusal(writeText(folder.path("head.mp4"), bytes.substr(0, 100))).find("no film"),
              std::string::npos);
    const std::string back = bytes.substr(bytes.find("mdat"));
    EXPECT_NE(refusal(writeText(folder.path("back.mp4"), back)).find("no film"), std::string::npos);
    EXPECT_FALSE(hasChildren());
}

/// What ffprobe may say, from a script in its place.
class Told {
public:
    Result<ClipFacts> answer(const std::string& stream, const std::string& frames)
    {
        std::string lines;
        for (const char* const line :
             {"index=0", "codec_type=\"video\"", "codec_name=\"h264\"", "time_base=\"1/30\"",
              "start_time=\"0.0\"", "pix_fmt=\"yuv420p\""})
            lines += std::string("streams.stream.0.") + line + "\n";
        const std::string script = "case \"$*\" in *packet=*) printf '" + frames +
                                   "';; *) cat <<'END'\n" + lines + stream +
                                   "\nEND\n;; esac\necho \"$*\" > '" + m_folder.path("asked") + "'";
        makeScript(m_folder.path("ffprobe"), script);
        m_options.tools = DecoderTools{m_folder.path("ffprobe"), m_folder.path("ffprobe")};
        m_options.silence_s = 10;
        return probeClip(writeText(m_folder.path("film.mp4"), "x"), m_options);
    }
    std::string refusal(const std::string& stream, const std::string& frames)
    {
        return complaint(answer(stream, frames));
    }
    void askFor(double from_s, double to_s)
    {
        m_options.from_s = from_s;
        m_options.to_s = to_s;
    }
    /// What it was asked for last.
    std::string asked() const { return bytesOf(m_folder.path("asked")); }

private:
    OutputFolder m_folder;
    ClipOptions m_options;
};

std::string sized(const std::string& width, const std::string& height)
{
    return "streams.stream.0.width=" + width + "\nstreams.stream.0.height=" + height;
}

// Holds what is made of every answer ffprobe can give: sizes, row orders, counts of frames.
TEST(BadClip, IsRefusedByWhatIsToldOfIt)
{
    Told told;
    const std::string three = "0,K__\\n1,___\\n2,___\\n";
    EXPECT_EQ(told.refusal(sized("7680", "4320"), three), "");
    EXPECT_EQ(told.refusal(sized("60000", "60000"), three),
              "the film has 60000 × 60000 pixels: at most 8192 × 4608 are read");
    EXPECT_EQ(told.refusal(sized("8192", "8192"), three),
              "the film has 8192 × 8192 pixels: at most 8192 × 4608 are read");
    EXPECT_NE(told.refusal(sized("99999999999", "1080"), three).find("is not known"),
              std::string::npos);
    EXPECT_NE(told.refusal(sized("-5", "1080"), three).find("is not known"), std::string::npos);
    EXPECT_EQ(told.refusal(sized("32", "32"), three),
              "the film has 32 × 32 pixels: at least 64 × 64 are needed");
    const std::string usual = sized("1920", "1080");
    EXPECT_EQ(told.refusal(usual, ""), "there is no frame in this film");
    EXPECT_EQ(told.refusal(usual, "0,KD_\\n"), "there is no frame in this film");
    EXPECT_EQ(told.refusal(usual, "0,K__\\n"),
              "there is a single frame, and vibration shows in many");
    EXPECT_EQ(told.refusal(usual, "7,K__\\n7,___\\n"),
              "there is a single frame, and vibration shows in many");
    EXPECT_EQ(told.refusal(usual, "N/A,K__\\nN/A,___\\n"),
              "the film does not say when each frame was taken: save it as MP4 or MOV");
    for (const std::string order : {"tt", "bb", "tb", "bt"})
        EXPECT_NE(told.refusal(usual + "\nstreams.stream.0.field_order=\"" + order + "\"", three)
                      .find("the film is interlaced"),
                  std::string::npos);
    EXPECT_EQ(told.refusal(usual + "\nstreams.stream.0.disposition.attached_pic=1", three),
              "this is a single picture: a film has many");
    EXPECT_EQ(told.refusal(usual + "\nstreams.stream.0.field_order=\"progressive\"", three), "");

    EXPECT_EQ(told.refusal(usual + "\nstreams.stream.0.duration=\"7200.0\"", ""),  // not listed
              "7200\u00A0s of film are more than the 60\u00A0s that are read at once: name a part");
    EXPECT_EQ(told.refusal(usual, "0,K__\\n1,___\\n1830,___\\n"),
              "61\u00A0s of film are more than the 60\u00A0s that are read at once: name a part");

    const std::string upright = sized("1080", "1920");
    const auto turnedByProgram = told.answer(upright, three);
    ASSERT_TRUE(turnedByProgram);
    ASSERT_EQ(turnedByProgram->warnings.size(), 1U);
    EXPECT_EQ(turnedByProgram->warnings[0].code, "film_upright");
    const std::string turn = "\nstreams.stream.0.side_data_list.side_data.0.rotation=-90";
    const auto turnedByMark = told.answer(usual + turn, three);
    ASSERT_TRUE(turnedByMark);
    EXPECT_EQ(turnedByMark->rotation_deg, 270);
    EXPECT_TRUE(turnedByMark->warnings.empty());
    EXPECT_FALSE(hasChildren());
}

// Oracle: by hand: of frames of 100 × 80 pixels that build upon others, 200 and 400 bytes; of
// frames that all stand by themselves, 1000 and 3000; where sizes are not told, none.
TEST(Clip, SaysHowManyBitsItHas)
{
    Told told;
    const std::string small = sized("100", "80");
    const auto bits = [&](const std::string& frames) {
        const auto facts = told.answer(small, frames);
        return facts ? facts->bitsPerPixel : -1.0;
    };
    EXPECT_NEAR(bits("0,9000,K__\\n1,200,___\\n2,400,___\\n3,99,_D_\\n"), 0.3, 1e-9);
    EXPECT_NEAR(bits("0,9000,K__,\\n\\n1,200,___,\\n2,400,___\\n3,99,_D_,\\n"), 0.3, 1e-9);
    EXPECT_EQ(bits("0,9000,K__\\n1,200,___\\n2,___\\n"), 0.0);
    EXPECT_EQ(bits("0,1000,K_\\n1,3000,K_\\n"), 0.0);  // builds upon nothing, so nothing lags
    EXPECT_EQ(bits("0,K__\\n1,___\\n2,___\\n"), 0.0);
}

// Oracle: by hand: frames are listed from two seconds before a part to two behind it, by the file's
// own stamps; a file may state half a second more than the 60 that are read at once.
TEST(Clip, IsAskedForItsPart)
{
    Told told;
    const std::string late = sized("100", "80") + "\nstreams.stream.0.start_time=\"0.5\"";
    told.askFor(10, 20);
    EXPECT_EQ(told.refusal(late, "345,K__\n346,___\n"), "");
    EXPECT_NE(told.asked().find("-read_intervals 8500000us%22500000us "), std::string::npos)
        << told.asked();
    told.askFor(1.5, std::numeric_limits<double>::infinity());
    EXPECT_EQ(told.refusal(late, "75,K__\n76,___\n"), "");
    EXPECT_NE(told.asked().find("-read_intervals 500000us% "), std::string::npos) << told.asked();
    const auto stated = [&](double from_s, double to_s) {
        told.askFor(from_s, to_s);
        return told.refusal(sized("100", "80") + "\nstreams.stream.0.duration=\"100.4\"",
                            "1245,K__\n1246,___\n");
    };
    EXPECT_EQ(stated(40, 200), "");
    EXPECT_EQ(stated(30, 90.4), "");
    EXPECT_EQ(stated(39, 200).substr(0, 13), "61\u00A0s of film");
    EXPECT_EQ(stated(10, 71).substr(0, 13), "61\u00A0s of film");
}

// Holds that programs that die, hang or talk nonsense end in one sentence, and nothing is left.
TEST(BadClip, WithABrokenDecoderEndsInASentence)
{
    const OutputFolder folder;
    const std::string file = writeText(folder.path("film.mp4"), "x");
    ClipFacts facts;
    facts.width = facts.height = 64;
    facts.tick_s = 0.04;
    facts.frameRate_hz = 25;
    for (int n = 0; n < 100; ++n)
        facts.frameTime_s.push_back(0.04 * n);
    ClipOptions options;
    options.silence_s = 1.0;
    const auto ending = [&](const std::string& script) {
        options.tools = DecoderTools{makeScript(folder.path("ffprobe"), script),
                                     makeScript(folder.path("ffmpeg"), script)};
        const WholeClip clip = wholeClip(file, facts, options);
        EXPECT_FALSE(hasChildren()) << script;
        return clip.error ? english(clip.error->what) : "no error";
    };
    const std::string speaker = "[Parsed_showinfo_1 @ 0x1] [info] ";
    const std::string say =
        "say() { echo \"" + speaker + "n: $1 pts: $1 pts_time:0 fmt:gray s:64x64 i:P \" >&2; }\n";
    const std::string pixels = "head -c 4096 /dev/urandom\n";

    EXPECT_EQ(ending("exit 0"), "ffmpeg cannot decode this film");
    EXPECT_EQ(ending("echo '[h264 @ 0x1] [error] no such thing.' >&2; exit 1"),
              "ffmpeg cannot decode this film: no such thing");
    EXPECT_EQ(ending(say + "say 0\n" + pixels + "say 1\n" + pixels + "kill -9 $$"),
              "ffmpeg broke off after frame 2");
    EXPECT_EQ(ending(say + "say 0\n" + pixels + "say 1\nhead -c 100 /dev/zero"),
              "ffmpeg broke off after frame 1");
    options.silence_s = 0.15;  // these never answer
    const std::string hung = "ffmpeg gave no answer for too long and was ended";
    EXPECT_EQ(ending("sleep 1000"), hung);
    EXPECT_EQ(ending("trap '' TERM INT; while :; do sleep 1000; done"), hung);
    EXPECT_EQ(ending(say + "say 0\n" + pixels + "sleep 1000"), hung);
    EXPECT_EQ(ending(say + "say 0\nhead -c 100 /dev/zero\nsleep 1000"), hung);
    EXPECT_EQ(ending("exec yes >&2"), hung);
    options.silence_s = 1.0;
    // One that always comes with the next frame before it is given up, and one without an end.
    EXPECT_EQ(ending(say + "for n in 0 1 2 3 4 5 6 7 8 9 10 11 12 13 14; do say $n\n" + pixels +
                     "sleep 0.1; done"),
              hung);
    writeText(folder.path("ffmpeg.frame"), std::string(4096, 'x'));
    EXPECT_EQ(ending(say + "x=$(cat \"$0.frame\")\nsay 0\n" + pixels +
                     "while :; do say 1; printf %s \"$x\"; done"),
              "ffmpeg shows far more frames than the film lists, and was ended");
    const std::string strange =
        "what ffmpeg says of the frames is not understood: its version is too old or too new";
    EXPECT_EQ(ending("exec cat /dev/zero"), strange);
    EXPECT_EQ(ending("echo '" + speaker + "n: 0 pts: 0 fmt:rgb24 s:64x64' >&2; cat /dev/zero"),
              strange);
    EXPECT_EQ(ending("echo '" + speaker + "n: 0 pts: x fmt:gray s:64x64' >&2; cat /dev/zero"),
              "the film does not say when each frame was taken: save it as MP4 or MOV");
    EXPECT_EQ(ending("echo '" + speaker + "n: 0 pts: 0 fmt:gray s:64000x64000' >&2; cat /dev/zero"),
              "the size of the frames changes within the film: name a part where it stays");
    EXPECT_EQ(ending("echo '" + speaker + "n: 0 pts: 0 fmt:gray s:64x64 i:T' >&2; cat /dev/zero")
                  .substr(0, 22),
              "the film is interlaced");
    const std::string still = "head -c 4096 /dev/zero\n";
    EXPECT_EQ(ending(say + "say 0\n" + still + "say 1\n" + still),
              "all frames of this part are the same: it is a still picture");

    // The one that is asked first is no better.
    options.silence_s = 0.15;
    const auto asked = [&](const std::string& script) {
        options.tools = DecoderTools{makeScript(folder.path("ffprobe"), script), {}};
        const std::string text = complaint(probeClip(file, options));
        EXPECT_FALSE(hasChildren()) << script;
        return text;
    };
    EXPECT_EQ(asked("sleep 1000"), "ffprobe gave no answer for too long and was ended");
    options.silence_s = 1.0;
    EXPECT_EQ(asked("kill -9 $$"), "this is no film that ffmpeg reads");
    EXPECT_EQ(asked("exec yes"), "ffprobe has more to say of this file than of any film");
    EXPECT_EQ(asked("exit 0"), "there is no film in this file");
    EXPECT_EQ(asked("head -c 100000 /dev/urandom"), "there is no film in this file");
}

}  // namespace
}  // namespace stillbay
