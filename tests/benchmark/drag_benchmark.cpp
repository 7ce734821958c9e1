// SPDX-License-Identifier: MIT
// Drags the length slider of the six-arm sample by a script and measures, for every move, how long
// it takes until a frame is painted whose result is at least as new; beside it, in the same run,
// one repaint of the same two charts without any computing.
#include "ui/charts/throttle_chart.h"
#include "ui/charts/transmissibility_chart.h"
#include "ui/window/main_window.h"
#include "ui/window/tuning_view.h"

#include <QApplication>
#include <QElapsedTimer>
#include <QSlider>
#include <QTemporaryDir>
#include <QTest>
#include <QTimer>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <deque>
#include <vector>

namespace stillbay::ui {
namespace {

constexpr int kTick_ms = 16;  // 60 moves a second
constexpr int kDrag_ms = 10000;
constexpr int kRepaints = 300;  // before the drag, and again after it
constexpr int kSwing = 20;      // of the slider to either side, in its own steps

// The application, and a word after each frame that was painted.
class Painted final : public QApplication {
public:
    using QApplication::QApplication;

    bool notify(QObject* receiver, QEvent* event) override
    {
        const bool isFrame = event->type() == QEvent::UpdateRequest && receiver == window;
        const bool taken = QApplication::notify(receiver, event);
        if (isFrame && onFrame)
            onFrame();
        return taken;
    }

    QWidget* window = nullptr;
    std::function<void()> onFrame;
};

struct Times {
    std::vector<double> ms;

    double at(double share) const
    {
        std::vector<double> sorted = ms;
        std::sort(sorted.begin(), sorted.end());
        return sorted[static_cast<std::size_t>(
            std::lround(share * static_cast<double>(sorted.size() - 1)))];
    }
};

void print(const char* what, const Times& times)
{
    std::printf("%-34s %5zu times  p50 %6.1f ms  p99 %6.1f ms  max %6.1f ms\n", what,
                times.ms.size(), times.at(0.5), times.at(0.99), times.at(1.0));
}

class Drag {
public:
    Drag(Painted& application, MainWindow& window, QSlider& slider)
        : m_application(application), m_window(window), m_slider(slider)
    {
        m_clock.start();
    }

    Times repaints()
    {
        Times times;
        TuningView& view = m_window.tuning();
        for (int k = 0; k < kRepaints; ++k) {
            bool isPainted = false;
            m_application.onFrame = [&] {
                isPainted = true;
            };
            const double start = now_ms();
            view.transmissibilityChart().replot();
            view.acrossThrottle().replot();
            while (!isPainted)
                QCoreApplication::processEvents();
            times.ms.push_back(now_ms() - start);
            QTest::qWait(kTick_ms - static_cast<int>(times.ms.back()) % kTick_ms);
        }
        m_application.onFrame = nullptr;
        return times;
    }

    Times drag()
    {
        QObject::connect(&m_window.recompute(), &Recompute::finished, &m_slider,
                         [this](const Outcome& outcome) {
                             m_resultRevision = outcome.revision;
                             ++m_results;
                         });
        m_application.onFrame = [this] {
            frame();
        };
        const int start = m_slider.value();
        const double begin = now_ms();
        int tick = 0;
        QTimer hand;
        hand.setTimerType(Qt::PreciseTimer);
        QObject::connect(&hand, &QTimer::timeout, [&] {
            const int phase = tick++ % (4 * kSwing);  // up, down and up again, one step a tick
            move(start + (phase <= kSwing       ? phase
                          : phase <= 3 * kSwing ? 2 * kSwing - phase
                                                : phase - 4 * kSwing));
        });
        m_slider.setSliderDown(true);
        hand.start(kTick_ms);
        while (now_ms() - begin < kDrag_ms)
            QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
        hand.stop();
        m_slider.setSliderDown(false);
        while (!m_window.recompute().isCurrent() || !m_waiting.empty())
            QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
        m_application.onFrame = nullptr;
        return m_latency;
    }

    void report() const
    {
        const auto half = m_behind.size() / 2;
        const auto most = [](auto from, auto to) {
            return from == to ? 0 : *std::max_element(from, to);
        };
        const auto middle = m_behind.begin() + static_cast<std::ptrdiff_t>(half);
        std::printf(
            "results shown: %d; moves not yet on screen at the next move: at most %d in the "
            "first half, %d in the second\n",
            m_results, most(m_behind.begin(), middle), most(middle, m_behind.end()));
    }

private:
    struct Move {
        quint64 revision;
        double at_ms;
    };

    double now_ms() const { return static_cast<double>(m_clock.nsecsElapsed()) * 1e-6; }

    void move(int position)
    {
        m_behind.push_back(static_cast<int>(m_waiting.size()));
        const quint64 before = m_window.document().revision();
        const double at_ms = now_ms();
        m_slider.setSliderPosition(position);
        if (m_window.document().revision() != before)
            m_waiting.push_back({m_window.document().revision(), at_ms});
    }

    void frame()
    {
        while (!m_waiting.empty() && m_waiting.front().revision <= m_resultRevision) {
            m_latency.ms.push_back(now_ms() - m_waiting.front().at_ms);
            m_waiting.pop_front();
        }
    }

    Painted& m_application;
    MainWindow& m_window;
    QSlider& m_slider;
    QElapsedTimer m_clock;
    std::deque<Move> m_waiting;
    std::vector<int> m_behind;
    Times m_latency;
    quint64 m_resultRevision = 0;
    int m_results = 0;
};

QSlider* lengthSlider(MainWindow& window)
{
    for (QSlider* slider : window.findChildren<QSlider*>())
        if (slider->accessibleName() == QStringLiteral("Free length, slider"))
            return slider;
    return nullptr;
}

int run(Painted& application)
{
    MainWindow window;
    application.window = &window;
    window.resize(1920, 1080);
    window.show();
    if (!window.openFile(QStringLiteral(STILLBAY_SAMPLES_DIR "/quarry.stillbay")))
        return 1;
    QSlider* const slider = lengthSlider(window);
    if (!slider || !QTest::qWaitFor([&] { return window.recompute().isCurrent(); }, 20000))
        return 1;
    QTest::qWait(500);
    Drag drag(application, window, *slider);
    Times repaints = drag.repaints();
    const Times latency = drag.drag();
    const Times after = drag.repaints();
    repaints.ms.insert(repaints.ms.end(), after.ms.begin(), after.ms.end());
    print("slider move to painted frame", latency);
    print("one repaint of both charts alone", repaints);
    std::printf("ratio of the 99th percentiles %.2f\n", latency.at(0.99) / repaints.at(0.99));
    drag.report();
    window.document().undoStack().clear();
    return 0;
}

}  // namespace
}  // namespace stillbay::ui

int main(int argc, char** argv)
{
    const QTemporaryDir home;  // settings of its own
    qputenv("XDG_CONFIG_HOME", home.path().toLocal8Bit());
    qputenv("XDG_STATE_HOME", home.path().toLocal8Bit());
    stillbay::ui::Painted application(argc, argv);
    QApplication::setStyle(QStringLiteral("Fusion"));
    QApplication::setOrganizationName(QStringLiteral("stillbay-benchmark"));
    QApplication::setApplicationName(QStringLiteral("stillbay-benchmark"));
    return stillbay::ui::run(application);
}
