"""The studio's own templates and styles, tried on what they are to show: nothing of a danger is left out or hidden."""
