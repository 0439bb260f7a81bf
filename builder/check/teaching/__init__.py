"""What people do in a lesson: who watches, who weighs, which steps are dangerous, what prose contradicts."""
