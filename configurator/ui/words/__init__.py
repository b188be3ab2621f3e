"""What the trade's words mean, and which hand a door is: windows beside the work."""
