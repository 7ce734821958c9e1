// SPDX-License-Identifier: MIT
#include "ui/widgets/paced.h"

#include <QElapsedTimer>

#include <utility>

namespace stillbay::ui {
namespace {

constexpr int kBetween_ms = 100, kRest_ms = 200;
constexpr int kApart_ms = 30;  // more than a frame

QElapsedTimer& sinceAnyWasWritten()
{
    static QElapsedTimer since;
    return since;
}

}  // namespace

Paced::Paced(Pace pace, std::function<void()> write, QObject* parent)
    : QObject(parent), m_pace(pace), m_write(std::move(write))
{
    m_pause.setSingleShot(true);
    connect(&m_pause, &QTimer::timeout, this, [this] {
        if (m_due && !sinceAnyWasWritten().hasExpired(kApart_ms))
            m_pause.start(kApart_ms);
        else
            run();
    });
}

void Paced::ask()
{
    m_due = true;
    if (!m_pause.isActive())
        run();
    else if (m_pace == Pace::AtRest)
        m_pause.start(kRest_ms);
}

void Paced::run()
{
    if (!m_due)
        return;
    m_due = false;
    m_pause.start(m_pace == Pace::AtRest ? kRest_ms : kBetween_ms);
    m_write();
    sinceAnyWasWritten().start();
}

}  // namespace stillbay::ui
