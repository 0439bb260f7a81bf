"""The pages of the site: every one is reached in two ways, and none says what another document contradicts."""
